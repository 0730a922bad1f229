using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>The turnover that the meter shows against its design, strainers, and the water of washes.</summary>
public sealed class TurnoverRuleTests
{
    private const string Flow = "hall/circulation";
    private const string Pressure = "hall/filter";
    private const string Basket = "hall/strainer";

    // 480 m3 in 4 h: 120 m3/h by design, enough from 108, low under 90.
    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        TurnoverHours = 4,
        Filters =
        [
            new("f1", "Filter 1", 3.1) { CleanKilopascals = 30, WashCubicMetres = 6 },
            new("s1", "Strainer", null) { Kind = FilterKind.Strainer, CleanKilopascals = 5, BackwashRise = 15, BackwashEvery = TimeSpan.FromDays(7) },
        ],
        Probes =
        [
            .. Hall.Plan.Probes,
            new() { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = Flow, Range = new(-5, 300) },
            new() { Id = "f1-pressure", Name = "Filter 1 pressure", Measurand = Measurand.FilterPressure, Topic = Pressure, Range = new(-50, 500), FilterId = "f1" },
            new() { Id = "s1-pressure", Name = "Strainer suction", Measurand = Measurand.FilterPressure, Topic = Basket, Range = new(-50, 500), FilterId = "s1" },
        ],
    };

    [Theory, Evidence("R-053")]
    [InlineData(119, 30, 5, null)]
    [InlineData(109, 40, 5, null)]
    // The bed takes more than clean though less goes through.
    [InlineData(105, 62, 5, "turnover.short_by_filter")]
    // 105 of 120: a clean bed shows 23 to 26 of its 30 kPa, a clean basket 3.8 to 4.4 of its 5.
    [InlineData(105, 25, 4, "turnover.short_elsewhere")]
    [InlineData(105, 31, 4, "turnover.short")]
    public void A_turnover_falls_short_under_nine_tenths_of_its_design_and_the_pressures_say_what_speaks_for_it(double flow, double bed, double basket, string? cause)
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(59), (Pressure, bed), (Basket, basket), (Flow, flow));
        Assert.Null(bench.Alarm(RuleBook.TurnoverShort, "circulation"));
        bench.Hold(TimeSpan.FromMinutes(2), (Pressure, bed), (Basket, basket), (Flow, flow));
        Assert.Equal(cause, bench.Alarm(RuleBook.TurnoverShort, "circulation")?.Cause.Code);
        if (cause is null) return;
        // 480 m3 at 105 m3/h: 4.57 h.
        Assert.Equal(4.571, bench.Alarm(RuleBook.TurnoverShort, "circulation")!.Cause.Facts[3].Number!.Value, 0.001);
    }

    [Fact, Evidence("R-053")]
    public void It_is_enough_again_when_an_hour_comes_within_a_twentieth_of_the_design()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(61), (Flow, 105));
        bench.Hold(TimeSpan.FromMinutes(61), (Flow, 111));
        Assert.True(bench.IsUp(RuleBook.TurnoverShort, "circulation"));
        bench.Hold(TimeSpan.FromMinutes(61), (Flow, 115));
        Assert.False(bench.IsUp(RuleBook.TurnoverShort, "circulation"));
    }

    [Fact, Evidence("R-053")]
    public void What_is_low_is_told_once_and_water_that_stands_or_goes_backwards_is_no_turnover()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(70), (Flow, 80));
        Assert.True(bench.IsUp(RuleBook.CirculationLow, "circulation"));
        Assert.False(bench.IsUp(RuleBook.TurnoverShort, "circulation"));

        var washed = new Bench(Plan);
        washed.Hold(TimeSpan.FromMinutes(40), (Flow, 119));
        washed.Run(at => new BackwashBegun(at, TimeOrderedId.Derive(at, "backwash"), "f1", "R. Example"));
        washed.Hold(TimeSpan.FromMinutes(15), (Flow, 60));
        washed.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
        washed.Hold(TimeSpan.FromMinutes(10), (Flow, 119));
        Assert.Equal(119, washed.State.Flow.MeanOf(washed.Now));
        Assert.False(washed.IsUp(RuleBook.TurnoverShort, "circulation"));
    }

    [Fact]
    public void An_hour_is_the_mean_of_its_readings_and_one_heard_in_part_says_nothing()
    {
        var hour = default(FlowHour);
        for (var minute = 0; minute < 60; minute++) hour = hour.With(Hall.Nine + TimeSpan.FromMinutes(minute), minute < 30 ? 100 : 110);
        Assert.Null(hour.MeanOf(Hall.Nine + TimeSpan.FromMinutes(59)));
        var next = hour.With(Hall.Nine + TimeSpan.FromMinutes(60), 200);
        Assert.Equal(105, next.MeanOf(Hall.Nine + TimeSpan.FromMinutes(60)));
        // An hour of which ten minutes were heard leaves the mean before it, and that is told of for two hours.
        var broken = next.With(Hall.Nine + TimeSpan.FromMinutes(70), 200).With(Hall.Nine + TimeSpan.FromMinutes(150), 120);
        Assert.Equal(105, broken.MeanOf(Hall.Nine + TimeSpan.FromMinutes(180)));
        Assert.Null(broken.MeanOf(Hall.Nine + TimeSpan.FromMinutes(181)));
    }

    [Fact, Evidence("R-051"), Evidence("R-052")]
    public void A_strainer_is_emptied_by_pressure_and_by_time_and_never_backwashed()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 115), (Basket, 21));
        Assert.Equal("strainer.pressure_risen", bench.Alarm(RuleBook.FilterPressureRisen, "s1")?.Cause.Code);
        bench.Skip(TimeSpan.FromDays(8));
        bench.Tick();
        Assert.Equal("strainer.never_cleaned", bench.Alarm(RuleBook.BackwashOverdue, "s1")?.Cause.Code);
        var no = Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new BackwashBegun(at, Guid.CreateVersion7(), "s1", "R. Example")));
        Assert.Equal("backwash.of_strainer", no.Remarks[0].Reason.Code);
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "emptied"), "s1", "R. Example"));
        bench.Tick();
        Assert.Equal((false, "R. Example"), (bench.IsUp(RuleBook.BackwashOverdue, "s1"), bench.State.Filters[1].WashedBy));
        Assert.Null(bench.Entries.Select(e => e.Body).OfType<FilterEntry>().Single().CubicMetres);
    }

    [Fact]
    public void The_water_of_a_wash_is_what_was_said_or_the_usual_and_nothing_impossible()
    {
        var bench = new Bench(Plan);
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "one"), "f1", "R. Example"));
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "two"), "f1", "R. Example") { CubicMetres = 4.5 });
        Assert.Equal([(6.0, true), (4.5, false)], bench.Entries.Select(e => e.Body).OfType<FilterEntry>().Select(f => (f.CubicMetres!.Value, f.IsUsual)));
        foreach (var impossible in new[] { -1, 1001, double.NaN })
            Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new FilterWashed(at, Guid.CreateVersion7(), "f1", "R. Example") { CubicMetres = impossible }));
        Assert.Equal(bench.Events[2], JournalCodec.Read(JournalCodec.Write(bench.Events.Take(3).ToList()))[2]);
    }

    [Fact]
    public void The_clean_pressure_of_a_wash_is_held_against_the_flow_at_which_it_was_read()
    {
        var bench = new Bench(Plan);
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
        bench.Hold(TimeSpan.FromMinutes(45), (Flow, 100), (Pressure, 24));
        Assert.Equal((24, 100), (bench.State.Filters[0].CleanKilopascals, bench.State.Filters[0].CleanFlow));
        // The flow of another meter is no hour of this one; the same meter keeps its hour.
        var kept = bench.State.Flow;
        bench.Load(Plan with { CirculationLowStated = 80 });
        Assert.Equal(kept, bench.State.Flow);
        bench.Load(Plan with { Probes = [.. Plan.Probes.Select(p => p.Id == "circulation" ? p with { Id = "other", Topic = "hall/other" } : p)] });
        Assert.Equal(default, bench.State.Flow);
    }

    [Fact]
    public void The_flow_beside_a_clean_pressure_is_the_mean_of_the_time_in_which_the_meter_spoke()
    {
        var bench = new Bench(Plan);
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
        // The meter falls silent while the clean pressure is taken: what it said last is no flow of now.
        bench.Hold(TimeSpan.FromMinutes(20), (Flow, 100), (Pressure, 24));
        bench.Hold(TimeSpan.FromMinutes(25), (Pressure, 24));
        Assert.Equal((24, 100), (bench.State.Filters[0].CleanKilopascals, bench.State.Filters[0].CleanFlow));
        Assert.Equal((0, 0.0), (bench.State.Filters[0].FlowCount, bench.State.Filters[0].FlowSum));

        var mute = new Bench(Plan);
        mute.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
        mute.Hold(TimeSpan.FromMinutes(5), (Flow, 100), (Pressure, 24));
        mute.Hold(TimeSpan.FromMinutes(40), (Pressure, 24));
        Assert.Equal((24, null), (mute.State.Filters[0].CleanKilopascals, mute.State.Filters[0].CleanFlow));
    }

    [Fact, Evidence("R-053")]
    public void A_pressure_of_long_ago_speaks_for_nothing_while_the_turnover_falls_short()
    {
        var bench = new Bench(Plan);
        // A bed that was loaded, and its gauge has been silent since.
        bench.Hold(TimeSpan.FromMinutes(1), (Pressure, 62), (Basket, 5), (Flow, 105));
        bench.Hold(TimeSpan.FromMinutes(61), (Flow, 105));
        Assert.Equal("turnover.short", bench.Alarm(RuleBook.TurnoverShort, "circulation")?.Cause.Code);
    }
}
