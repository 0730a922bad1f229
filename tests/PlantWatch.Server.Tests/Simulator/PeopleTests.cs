using System.Text.Json;
using PlantWatch.Simulator;
using PlantWatch.Simulator.People;
using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class PeopleTests
{
    [Fact]
    public void Rounds_are_made_about_in_time_three_times_a_day()
    {
        var checks = Typed(Plants.Quiet(s => s.People.LateShare = s.People.MissedShare = 0), days: 10);
        Assert.Equal(30, checks.Count);
        Assert.All(checks, c => Assert.Contains(new[] { 7, 13, 20 }, due => Math.Abs((c.SampledAt.TimeOfDay - TimeSpan.FromHours(due)).TotalMinutes) < 30));
        Assert.All(checks, c => Assert.InRange((c.EnteredAt - c.SampledAt).TotalMinutes, 2, 7));
    }

    [Fact]
    public void Some_checks_are_typed_hours_later()
    {
        var checks = Typed(Plants.Quiet(s => s.People.LateShare = 0.5), days: 10);
        Assert.InRange(checks.Count(c => c.EnteredAt - c.SampledAt > TimeSpan.FromHours(1)), 8, 22);
    }

    [Fact]
    public void Solids_are_measured_once_a_week_and_alkalinity_daily()
    {
        var checks = Typed(Plants.Quiet(s => s.People.MissedShare = 0), days: 14);
        Assert.Equal(2, checks.Count(c => c.Result("dissolved_solids") is not null));
        Assert.Equal(14, checks.Count(c => c.Result("total_alkalinity") is not null));
    }

    [Fact]
    public void Every_check_has_a_time_ordered_id_of_its_own()
    {
        var ids = Typed(Plants.Quiet(), days: 5).Select(c => c.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(ids, id => Assert.Equal((7, true), (id.Version, id.Variant is >= 8 and <= 11)));
    }

    [Fact]
    public void A_check_tells_what_the_panel_shows()
    {
        var check = Typed(Plants.Quiet(), days: 1)[0];
        Assert.Equal(["main-ph", "main-orp", "main-temperature"], check.Panel.Select(p => p.ProbeId));
        Assert.InRange(check.Panel[0].Value, 7.2, 7.6);
    }

    [Fact]
    public void A_test_scatters_about_the_truth_by_its_method()
    {
        var water = Water(ph: 7.4, free: 1.5, alkalinity: 110);
        var chance = new Chance(5, "test");
        var ph = Enumerable.Range(0, 400).Select(_ => TestBench.Test("ph", water, chance).Value).ToList();
        Assert.Equal(7.4, ph.Average(), 0.01);
        Assert.InRange(Math.Sqrt(ph.Average(v => Math.Pow(v - 7.4, 2))), 0.03, 0.05);
    }

    // Phenol red turns between 6.8 and 8.4: outside there is only a bound (common practice).
    [Theory]
    [InlineData(6.3, "below", 6.8)]
    [InlineData(9.0, "above", 8.4)]
    public void Outside_the_dye_there_is_only_a_bound(double ph, string censoring, double bound)
    {
        var result = TestBench.Test("ph", Water(ph, 1, 110), new Chance(1, "x"));
        Assert.Equal((censoring, bound), (result.Censoring, result.Value));
    }

    // Tablet count on a 50 mL sample: n x 40 - 20 (common practice).
    [Fact]
    public void Tablets_count_in_steps_of_forty()
    {
        var chance = new Chance(2, "x");
        Assert.All(Enumerable.Range(0, 50), _ => Assert.Contains(TestBench.Test("total_alkalinity", Water(7.4, 1, 110), chance).Value, new[] { 100.0, 60, 140 }));
    }

    [Fact]
    public void A_slip_changes_what_is_written()
    {
        var changed = Typed(Plants.Quiet(s => s.People.SlipShare = 1), days: 3);
        var honest = Typed(Plants.Quiet(s => s.People.SlipShare = 0), days: 3);
        Assert.Contains(changed.Zip(honest), pair => !pair.First.Results.SequenceEqual(pair.Second.Results));
    }

    [Fact]
    public void The_body_is_what_the_interface_describes()
    {
        var check = Typed(Plants.Quiet(), days: 1)[0];
        using var json = JsonDocument.Parse(check.Body());
        var root = json.RootElement;
        Assert.False(root.TryGetProperty("id", out _));
        Assert.Equal("main-pool", root.GetProperty("poolId").GetString());
        Assert.Equal("free_chlorine", root.GetProperty("results")[0].GetProperty("measurand").GetString());
        Assert.Equal("photometer", root.GetProperty("results")[0].GetProperty("method").GetString());
        Assert.Equal(check.SampledAt, root.GetProperty("sampledAt").GetDateTimeOffset());
    }

    [Fact]
    public void Low_alkalinity_is_mended_by_hand()
    {
        var plant = new SimulatedPlant(Plants.Quiet(s => s.Circuits[0].Pools[0].Start.Alkalinity = 50), Plants.Start);
        var before = plant.Circuits[0].View("main-pool").Alkalinity;
        Assert.Contains(plant.AdvanceTo(Plants.Start.AddHours(9)).Notes, n => n.Contains("bicarbonate", StringComparison.Ordinal));
        Assert.InRange(plant.Circuits[0].View("main-pool").Alkalinity - before, 15, 25);
    }

    [Fact]
    public void Weekends_are_busier()
    {
        var crowd = new Crowd(new PoolSetup { Id = "p", Bathers = new BatherSetup { Peak = 60, WeekendFactor = 2 } }, 3);
        double Mean(DateTime day) => Enumerable.Range(0, 96).Average(q => crowd.At(day.AddMinutes(15 * q)));
        Assert.True(Mean(new DateTime(2026, 3, 7)) > 1.4 * Mean(new DateTime(2026, 3, 4)));
    }

    private static List<CheckSheet> Typed(Scenario scenario, int days) =>
        new SimulatedPlant(scenario, Plants.Start) { Cadence = Cadence.History }.AdvanceTo(Plants.Start.AddDays(days)).Checks;

    private static WaterView Water(double ph, double free, double alkalinity) => new(ph, free, 0.2, free / 2, 28, alkalinity, 240, 1100, 0.05);
}
