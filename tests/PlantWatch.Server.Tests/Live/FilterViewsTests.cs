using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;

namespace PlantWatch.Server.Tests.Live;

/// <summary>The turnover of the last hour beside what the filters say of it, and the water of washes.</summary>
public sealed class FilterViewsTests
{
    private static readonly Instant Now = Instant.From(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    private static readonly CircuitPlan Plan = new()
    {
        Id = "c", Name = "Circuit", TimeZone = "Europe/London", TurnoverHours = 4, BalanceTankCubicMetres = 40,
        Filters = [new("f1", "Filter 1", 5) { CleanKilopascals = 30 }, new("s1", "Strainer", null) { Kind = FilterKind.Strainer }],
        Pools = [new() { Id = "main", Name = "Main pool", VolumeCubicMetres = 400 }],
        Probes = [new() { Id = "across", Name = "Pressure", Measurand = Measurand.FilterPressure, FilterId = "f1", Topic = "t", Range = new(0, 300) }],
    };

    private static CircuitState State(double mean, double pressure) => CircuitState.Of(Plan) with
    {
        Flow = new(Now, Now, mean, 1, mean, Now),
        Filters = [new("f1", Now), new("s1", Now)],
        Probes = [new() { Id = "across", Last = new(Now, Now, pressure, pressure, Quality.Received) }],
        Pools = [new() { Id = "main" }],
    };

    [Theory]
    [InlineData(85, 60, true, "turnover.sign_loaded turnover.sign_unknown")]
    [InlineData(85, 24, true, "turnover.sign_as_clean turnover.sign_unknown turnover.look_at_strainer")]
    [InlineData(95, 60, false, "")]
    [InlineData(120, 45, false, "filter_rate.above_design")]
    [InlineData(260, 100, false, "filter_rate.too_high")]
    public void A_turnover_that_falls_short_names_what_speaks_for_it_and_a_rate_that_is_too_high_is_said(double mean, double pressure, bool isShort, string says)
    {
        var view = FilterViews.Of(State(mean, pressure), Now, UnitSystem.Metric);
        // 400 m3 in 4 h: 100 m3/h by design, through 5 m2 of bed; the strainer is none.
        Assert.Equal((isShort, 100.0, 400 / mean, mean / 5), (view.Turnover.FallsShort, view.Turnover.DesignCubicMetresPerHour!.Value, view.Turnover.Hours!.Value, view.Turnover.Rate!.Value));
        Assert.Equal(says, string.Join(' ', view.Says.Select(s => s.Code)));
        Assert.Null(FilterViews.Of(State(mean, pressure), Now + TimeSpan.FromHours(3), UnitSystem.Metric).Turnover.Hours);
    }

    [Fact]
    public void Washes_thin_what_fresh_water_holds_none_of_since_its_test()
    {
        var pool = Plan.Pools[0];
        var test = new TestResult(Measurand.CyanuricAcid, 60, TestMethod.Photometer);
        var at = DoseSituations.Of(State(100, 30), "main", null, Now) with
        {
            Tests = ImmutableSortedDictionary<Measurand, ManualValue>.Empty.Add(Measurand.CyanuricAcid, new ManualValue(test, Now - TimeSpan.FromDays(5), false, Guid.Empty)),
        };
        (Instant, FilterEntry) Wash(double daysAgo, double? m3, string filter = "f1") => (Now - TimeSpan.FromDays(daysAgo), new(Guid.CreateVersion7(), filter, "R. Example") { CubicMetres = m3 });
        var view = WashWaterViews.Of(at, [Wash(9, 11), Wash(4, 22), Wash(2, null), Wash(1, null, "s1")], UnitSystem.Metric)!;
        Assert.Equal((3, 1, 33.0), (view.Count, view.Unstated, view.Total.Value));
        // 33 of 440 m3 in all; 22 since the test: 60 e^(-0.05) = 57.07 mg/L.
        Assert.Equal(1 - Math.Exp(-33.0 / 440), view.PartReplaced, 1e-9);
        Assert.Equal((Measurand.CyanuricAcid, 57.07), (view.Diluted.Single().Measurand, Math.Round(view.Diluted.Single().NotBelow, 2)));
    }
}
