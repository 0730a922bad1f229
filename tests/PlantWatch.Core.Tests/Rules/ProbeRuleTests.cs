using PlantWatch.Core.Alarms;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>What is wrong with probes, cells, clocks and pumps.</summary>
public sealed class ProbeRuleTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    [Fact, Evidence("R-020")]
    public void A_probe_that_was_heard_and_falls_silent_is_an_alarm_until_it_speaks()
    {
        var bench = new Bench();
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(TimeSpan.FromSeconds(110));
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(Minute);
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Says(Hall.Ph, "7.4");
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
    }

    [Fact, Evidence("R-020")]
    public void A_probe_never_heard_is_silent_from_when_it_was_expected()
    {
        var bench = new Bench();
        bench.Pass(TimeSpan.FromSeconds(110));
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(Minute);
        Assert.Equal("probe.never_heard", bench.Alarm(RuleBook.Silent, "main-ph")!.Cause.Code);
        bench.Says(Hall.Ph, "7.4");
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
    }

    [Fact, Evidence("R-020")]
    public void A_probe_that_a_new_plant_file_names_is_expected_from_then_on()
    {
        var bench = new Bench(Hall.Plan.Without("main-orp"));
        bench.Pass(10 * Minute);
        bench.Load(Hall.Plan);
        bench.Pass(TimeSpan.FromSeconds(110));
        Assert.False(bench.IsUp(RuleBook.Silent, "main-orp"));
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(Minute);
        Assert.True(bench.IsUp(RuleBook.Silent, "main-orp"));
    }

    [Fact, Evidence("R-020")]
    public void After_a_long_stop_of_the_server_silence_counts_from_when_it_listens_again()
    {
        var bench = new Bench();
        bench.Says(Hall.Ph, "7.4");
        bench.Tick();
        bench.Skip(TimeSpan.FromHours(6));
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(TimeSpan.FromSeconds(110));
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(Minute);
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
        Assert.True(bench.Alarm(RuleBook.Silent, "main-ph")!.Cause.Facts[1].Number > 360);
    }

    [Fact, Evidence("R-020")]
    public void A_stop_of_the_server_takes_back_no_silence_that_stood_before()
    {
        var bench = new Bench();
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(5 * Minute);
        bench.Skip(TimeSpan.FromHours(6));
        bench.Tick();
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
    }

    [Fact, Evidence("R-020")]
    public void A_probe_with_a_longer_interval_may_be_silent_for_three_of_them()
    {
        var bench = new Bench(Hall.Plan.With("main-ph", p => p with { Every = TimeSpan.FromMinutes(10) }));
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(29 * Minute);
        Assert.False(bench.IsUp(RuleBook.Silent, "main-ph"));
        bench.Pass(2 * Minute);
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
    }

    [Fact, Evidence("R-021")]
    public void A_probe_that_the_tests_put_out_of_specification_is_an_alarm_until_they_take_it_back()
    {
        var bench = Drifted();
        Assert.Equal(Standing.OutOfSpecification, bench.Probe("main-ph").Trust.Standing);
        Assert.True(bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        Assert.Equal("trust.reads_high", bench.Alarm(RuleBook.ProbeNotTrusted, "main-ph")!.Cause.Code);
    }

    [Fact, Evidence("R-021")]
    public void A_cell_without_flow_does_not_take_back_what_the_tests_said()
    {
        var bench = Drifted();
        bench.Hold(5 * Minute, (Hall.Flow, 0), (Hall.Ph, 7.9));
        Assert.Equal(Standing.CheckFunction, bench.Probe("main-ph").Signal.Standing);
        Assert.True(bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
    }

    [Fact, Evidence("R-021")]
    public void A_signal_that_leaps_to_seven_and_sits_there_is_broken_glass()
    {
        var bench = new Bench();
        bench.Hold(5 * Minute, (Hall.Ph, 7.45));
        bench.Hold(25 * Minute, (Hall.Ph, 7.02));
        Assert.True(bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        Assert.Equal("signal.sits_at_seven", bench.Probe("main-ph").Signal.Reasons[0].Code);
    }

    [Fact, Evidence("R-021")]
    public void A_signal_that_failed_in_a_late_delivery_is_an_alarm_with_the_next_reading_in_time()
    {
        var bench = new Bench();
        var start = bench.Now;
        bench.LearnerSays("ph", start, 7.45);
        bench.Pass(40 * Minute);
        // The gateway was cut off and hands over what it kept: the glass broke meanwhile.
        for (var s = 25; s <= 2300; s += 25) bench.LearnerSays("ph", start + TimeSpan.FromSeconds(s), s < 300 ? 7.45 : 7.02);
        Assert.Equal(Standing.Failure, bench.Probe("learner-ph").Signal.Standing);
        Assert.False(bench.IsUp(RuleBook.ProbeNotTrusted, "learner-ph"));
        bench.LearnerSays("ph", bench.Now, 7.02);
        Assert.True(bench.IsUp(RuleBook.ProbeNotTrusted, "learner-ph"));
    }

    [Fact, Evidence("R-022")]
    public void No_sample_flow_for_fifteen_seconds_is_an_alarm_and_flow_for_five_clears_it()
    {
        var bench = new Bench();
        bench.Hold(TimeSpan.FromSeconds(10), (Hall.Flow, 0));
        Assert.False(bench.IsUp(RuleBook.NoSampleFlow, "main-flow"));
        bench.Hold(TimeSpan.FromSeconds(20), (Hall.Flow, 0));
        Assert.True(bench.IsUp(RuleBook.NoSampleFlow, "main-flow"));
        bench.Says(Hall.Flow, "1");
        bench.Pass(TimeSpan.FromSeconds(30));
        Assert.False(bench.IsUp(RuleBook.NoSampleFlow, "main-flow"));
    }

    [Fact, Evidence("R-022")]
    public void Readings_without_flow_are_kept_and_marked()
    {
        var bench = new Bench();
        bench.Says(Hall.Flow, "0");
        bench.Says(Hall.Ph, "6.0");
        Assert.Equal(Quality.Received | Quality.FunctionCheck, bench.Readings[^1].Quality);
    }

    [Fact, Evidence("R-022")]
    public void A_flow_switch_taken_out_of_the_plant_file_suppresses_nothing_any_more()
    {
        var bench = new Bench();
        bench.Hold(3 * Minute, (Hall.Flow, 1), (Hall.Ph, 7.1));
        bench.Says(Hall.Flow, "0");
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Alarm(RuleBook.BelowLimit, "main-ph")!.State);
        bench.Load(Hall.Plan.Without("main-flow"));
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.BelowLimit, "main-ph")!.State);
    }

    [Theory, Evidence("R-023")]
    [InlineData(2), InlineData(4), InlineData(30)]
    public void Readings_that_are_late_for_two_minutes_are_an_alarm_since_nothing_watches_their_limits(int behind)
    {
        var bench = new Bench();
        for (var i = 0; i < 18; i++)
        {
            bench.LearnerSays("ph", bench.Now - (behind * Minute), 6.9);
            bench.Hold(TimeSpan.FromSeconds(10));
        }

        Assert.True(bench.IsUp(RuleBook.ClockDoubted, "learner-ph"));
        Assert.Null(bench.Alarm(RuleBook.BelowLimit, "learner-ph"));
    }

    [Fact, Evidence("R-030")]
    public void A_pump_that_says_fault_is_an_alarm_until_it_says_otherwise()
    {
        var bench = new Bench();
        bench.Says(Hall.AcidState, "fault");
        Assert.True(bench.IsUp(RuleBook.PumpFault, "acid-pump"));
        bench.Pass(60 * Minute);
        Assert.True(bench.IsUp(RuleBook.PumpFault, "acid-pump"));
        bench.Says(Hall.AcidState, "running");
        Assert.False(bench.IsUp(RuleBook.PumpFault, "acid-pump"));
        Assert.Equal([2.0, 1.0], bench.Readings.Where(r => r.Series == "acid-pump/state").Select(r => r.Raw));
    }

    [Fact, Evidence("R-031")]
    public void A_tank_under_its_level_for_a_minute_is_an_alarm_until_it_is_refilled()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.AcidTank, 14));
        Assert.False(bench.IsUp(RuleBook.TankLow, "acid-pump"));
        bench.Hold(TimeSpan.FromSeconds(10), (Hall.AcidTank, 14));
        Assert.True(bench.IsUp(RuleBook.TankLow, "acid-pump"));
        bench.Hold(5 * Minute, (Hall.AcidTank, 16));
        Assert.True(bench.IsUp(RuleBook.TankLow, "acid-pump"));
        bench.Hold(2 * Minute, (Hall.AcidTank, 95));
        Assert.False(bench.IsUp(RuleBook.TankLow, "acid-pump"));
    }

    private static Bench Drifted()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Flow, 1), (Hall.Ph, 7.9));
        for (var i = 0; i < 4; i++)
        {
            bench.CheckBeside("main-ph", 7.9, Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
            bench.Hold(10 * Minute, (Hall.Flow, 1), (Hall.Ph, 7.9));
        }

        return bench;
    }
}
