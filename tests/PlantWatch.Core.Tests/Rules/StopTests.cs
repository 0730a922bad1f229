using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Stops that always hold, by live probes and by a look at the bottom.</summary>
public sealed class StopTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    [Theory, Evidence("R-001")]
    [InlineData(6.4), InlineData(8.3)]
    public void A_pH_outside_the_stop_is_critical_after_its_on_delay(double ph)
    {
        var bench = new Bench();
        bench.Hold(TimeSpan.FromSeconds(20), (Hall.Ph, ph));
        Assert.False(bench.IsUp(RuleBook.StopPh, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(10), (Hall.Ph, ph));
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
        Assert.Equal(Priority.Critical, bench.Alarm(RuleBook.StopPh, "main-ph")!.Priority);
    }

    [Theory, Evidence("R-001")]
    [InlineData(6.5), InlineData(8.2)]
    public void A_pH_on_the_edge_of_the_stop_is_inside(double ph)
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Ph, ph));
        Assert.Null(bench.Alarm(RuleBook.StopPh, "main-ph"));
    }

    [Fact, Evidence("R-001")]
    public void A_stop_clears_only_when_the_value_is_back_by_its_deadband_for_the_off_delay()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Ph, 8.3));
        bench.Hold(5 * Minute, (Hall.Ph, 8.17));
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
        bench.Hold(Minute, (Hall.Ph, 8.1));
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(20), (Hall.Ph, 8.1));
        Assert.False(bench.IsUp(RuleBook.StopPh, "main-ph"));
    }

    [Fact, Evidence("R-001")]
    public void No_calibration_hides_a_raw_extreme()
    {
        var bench = new Bench();
        var id = Quantities.TimeOrderedId.Derive(bench.Now, "proposal");
        bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Offset = -1.2, ProposedBy = "R. Example" }));
        bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Approved, default, "J. Sample", null));
        bench.Hold(Minute, (Hall.Ph, 8.6));
        Assert.Equal(7.4, bench.Probe("main-ph").Last.Value, 9);
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
    }

    [Fact, Evidence("R-001")]
    public void A_stop_that_stood_when_the_flow_was_lost_stands()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Flow, 1), (Hall.Ph, 8.6));
        bench.Hold(30 * Minute, (Hall.Flow, 0), (Hall.Ph, 7.4));
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.StopPh, "main-ph")!.State);
    }

    [Fact, Evidence("R-001")]
    public void One_good_reading_and_then_silence_does_not_clear_a_stop()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Ph, 8.6));
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(60 * Minute);
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
    }

    [Theory, Evidence("R-002")]
    [InlineData(0.1), InlineData(11)]
    public void A_free_chlorine_outside_the_stop_is_critical(double milligrams)
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Chlorine, milligrams));
        Assert.True(bench.IsUp(RuleBook.StopFreeChlorine, "main-chlorine"));
    }

    [Fact, Evidence("R-003")]
    public void Water_above_forty_degrees_is_critical_and_cold_water_is_not()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Temperature, 4));
        Assert.Null(bench.Alarm(RuleBook.StopTemperature, "main-temperature"));
        bench.Hold(Minute, (Hall.Temperature, 40.5));
        Assert.True(bench.IsUp(RuleBook.StopTemperature, "main-temperature"));
    }

    [Fact, Evidence("R-004")]
    public void A_bottom_that_was_not_seen_is_critical_until_it_is_seen()
    {
        var bench = new Bench();
        bench.Check(bench.CheckOf() with { BottomVisible = false });
        Assert.True(bench.IsUp(RuleBook.StopBottom, "main"));
        bench.Pass(Minute);
        bench.Check(bench.CheckOf(Bench.Test(Quantities.Measurand.Ph, 7.4)));
        Assert.True(bench.IsUp(RuleBook.StopBottom, "main"));
        bench.Pass(Minute);
        bench.Check(bench.CheckOf() with { BottomVisible = true });
        Assert.False(bench.IsUp(RuleBook.StopBottom, "main"));
    }

    [Fact, Evidence("R-004")]
    public void An_older_look_at_the_bottom_that_arrives_late_does_not_clear_a_newer_one()
    {
        var bench = new Bench();
        bench.Check(bench.CheckOf() with { BottomVisible = false });
        bench.Pass(Minute);
        bench.Check(bench.CheckOf() with { BottomVisible = true, SampledAt = bench.Now - TimeSpan.FromHours(1) });
        Assert.True(bench.IsUp(RuleBook.StopBottom, "main"));
    }

    [Fact]
    public void What_is_about_people_is_never_shelved()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Ph, 8.6));
        var no = bench.Run(at => new AlarmShelved(at, bench.Alarm(RuleBook.StopPh, "main-ph")!.Id, at + Minute, "J. Sample", "noise"));
        Assert.Equal(TurnedDownKind.Conflict, Assert.IsType<Outcome.TurnedDown>(no).Kind);
        Assert.Equal(Quality.Received, bench.Probe("main-ph").Last.Quality);
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.StopPh, "main-ph")!.State);
    }
}
