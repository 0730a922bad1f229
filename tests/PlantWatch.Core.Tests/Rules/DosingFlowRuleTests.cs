using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Dosing into standing water is told at once.</summary>
public sealed class DosingFlowRuleTests
{
    private static readonly CircuitPlan Plan = Hall.Plan.With("main-ph", p => p with { Origin = SignalOrigin.PanelScaled }) with
    {
        TurnoverHours = 4,
        Pumps = [.. Hall.Plan.Pumps.Select(p => p with { Doses = p.Id == "acid-pump" ? ProductKind.HydrochloricAcid : ProductKind.SodiumHypochlorite })],
    };

    [Fact, Evidence("R-033")]
    public void A_pump_that_runs_without_sample_flow_is_told_after_a_few_strokes_and_not_before()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Tick();
        bench.Skip(TimeSpan.FromSeconds(10));
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Skip(TimeSpan.FromSeconds(15));
        bench.Tick();
        Assert.Equal("dosing.without_sample_flow", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")?.Cause.Code);
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "hypo-pump"));
    }

    [Theory, Evidence("R-033")]
    [InlineData(Hall.AcidState, "stopped")]
    [InlineData(Hall.Flow, "1")]
    public void It_clears_when_the_pump_stands_or_flow_is_back(string topic, string says)
    {
        var bench = Running();
        bench.Says(topic, says);
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
    }

    [Fact, Evidence("R-033")]
    public void A_circulation_that_stands_is_enough_even_while_the_sample_pump_keeps_the_cell_alive()
    {
        // 480 m3 in 4 h are 120 m3/h; low is 90 and standing is under 9.
        var flow = new ProbePlan { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = "hall/circulation", Range = new(0, 300), Every = TimeSpan.FromSeconds(30) };
        var bench = new Bench(Plan with { Probes = [.. Plan.Probes, flow] });
        bench.Says(Hall.Flow, "1");
        bench.Says(Hall.AcidState, "running");
        bench.Says("hall/hypo/state", "running");
        bench.Says("hall/circulation", "118");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Says("hall/circulation", "3");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.Equal("dosing.without_circulation", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")?.Cause.Code);
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "hypo-pump"));
    }

    [Fact, Evidence("R-033")]
    public void A_silent_switch_does_not_take_it_back()
    {
        var bench = Running();
        bench.Pass(TimeSpan.FromMinutes(30));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
    }

    [Fact, Evidence("R-033")]
    public void It_latches_until_the_plant_was_made_safe_and_somebody_resets_it_also_over_a_restart()
    {
        var bench = Running();
        bench.Says(Hall.AcidState, "stopped");
        bench.Pass(TimeSpan.FromMinutes(1));
        bench.Restart();
        var alarm = bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!;
        Assert.Equal(AlarmState.LatchedUnacknowledged, alarm.State);
        bench.Run(at => new AlarmAcknowledged(at, alarm.Id, "J. Sample", null));
        Assert.Equal("alarm.make_safe_first", WhyNot(bench.Run(at => new AlarmReset(at, alarm.Id, "J. Sample", null))));
        Assert.IsType<Outcome.Done>(MakeSafe(bench, alarm.Id));
        Assert.Equal("J. Sample", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.MadeSafe!.By);
        Assert.IsType<Outcome.AlreadyDone>(MakeSafe(bench, alarm.Id));
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmReset(at, alarm.Id, "J. Sample", null)));
        Assert.Null(bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump"));
    }

    [Theory, Evidence("R-033")]
    [InlineData(false, true, true, "alarm.bathers_out_first")]
    [InlineData(true, false, true, "alarm.isolate_pumps_first")]
    [InlineData(true, true, false, "alarm.hold_circulation")]
    public void Half_of_making_safe_is_not_recorded_as_safe(bool bathers, bool pumps, bool circulation, string why)
    {
        var bench = Running();
        var id = bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id;
        Assert.Equal(why, WhyNot(bench.Run(at => new PlantMadeSafe(at, id, bathers, pumps, circulation, "J. Sample", null))));
        Assert.Null(bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.MadeSafe);
    }

    [Fact, Evidence("R-033")]
    public void What_made_the_first_time_safe_says_nothing_of_the_second()
    {
        var bench = Running();
        MakeSafe(bench, bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id);
        bench.Says(Hall.AcidState, "stopped");
        bench.Pass(TimeSpan.FromMinutes(1));
        bench.Says(Hall.AcidState, "running");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.Null(bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.MadeSafe);
    }

    [Fact, Evidence("R-033")]
    public void Nobody_puts_it_away_and_no_state_of_the_pool_silences_it()
    {
        var bench = Running();
        var alarm = bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!;
        Assert.Equal("alarm.never_shelved", WhyNot(bench.Run(at => new AlarmShelved(at, alarm.Id, at + TimeSpan.FromMinutes(30), "J. Sample", "work on it"))));
        Assert.Equal("alarm.never_out_of_service", WhyNot(bench.Run(at => new AlarmTakenOutOfService(at, alarm.Key, "J. Sample", "work on it"))));
        Assert.Equal(SuppressedWhile.Never, RuleBook.DosesWithoutFlow.SuppressedWhile);
        Assert.Equal(SuppressedWhile.Never, RuleBook.RestartedUnsafe.SuppressedWhile);
    }

    [Fact, Evidence("R-033")]
    public void A_record_of_making_safe_is_for_what_asks_for_it()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Hall.Ph, 7.9));
        var other = bench.State.Alarms.Values.First(a => a.Active);
        Assert.Equal("alarm.nothing_to_make_safe", WhyNot(MakeSafe(bench, other.Id)));
    }

    [Fact, Evidence("R-034")]
    public void A_restart_before_it_was_made_safe_is_told_at_once()
    {
        var bench = Standing();
        Assert.False(bench.IsUp(RuleBook.RestartedUnsafe, "acid-pump"));
        bench.Says("hall/circulation", "118");
        bench.Tick();
        Assert.Equal("dosing.restarted_unsafe", bench.Alarm(RuleBook.RestartedUnsafe, "acid-pump")?.Cause.Code);
        Assert.True(bench.IsUp(RuleBook.RestartedUnsafe, "acid-pump"));
        MakeSafe(bench, bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id);
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.Equal(AlarmState.LatchedUnacknowledged, bench.Alarm(RuleBook.RestartedUnsafe, "acid-pump")!.State);
    }

    [Fact, Evidence("R-034")]
    public void A_restart_after_it_was_made_safe_is_nothing()
    {
        var bench = Standing();
        MakeSafe(bench, bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id);
        bench.Says("hall/circulation", "118");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.Null(bench.Alarm(RuleBook.RestartedUnsafe, "acid-pump"));
    }

    [Fact, Evidence("R-034")]
    public void A_restart_with_the_pump_still_running_and_the_cell_not_yet_filled_is_told_too()
    {
        var bench = Standing();
        bench.Says(Hall.AcidState, "running");
        bench.Pass(TimeSpan.FromMinutes(1));
        bench.Says(Hall.Flow, "0");
        bench.Says("hall/circulation", "118");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(bench.IsUp(RuleBook.RestartedUnsafe, "acid-pump"));
        Assert.Equal("dosing.without_circulation", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Cause.Code);
    }

    [Fact, Evidence("R-034")]
    public void A_word_that_pumps_are_isolated_does_not_count_while_one_says_that_it_runs()
    {
        var bench = Standing();
        bench.Says(Hall.AcidState, "running");
        bench.Pass(TimeSpan.FromMinutes(1));
        MakeSafe(bench, bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id);
        bench.Says("hall/circulation", "118");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.NotNull(bench.Alarm(RuleBook.RestartedUnsafe, "acid-pump"));
    }

    private static Outcome MakeSafe(Bench bench, Guid alarm) => bench.Run(at => new PlantMadeSafe(at, alarm, true, true, true, "J. Sample", "lines vented"));

    private static string WhyNot(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Reason.Code;

    // The acid pump ran while the circulation stood, and was stopped.
    private static Bench Standing()
    {
        var flow = new ProbePlan { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = "hall/circulation", Range = new(0, 300), Every = TimeSpan.FromSeconds(30) };
        var bench = new Bench(Plan with { Probes = [.. Plan.Probes, flow] });
        bench.Says(Hall.Flow, "1");
        bench.Says("hall/circulation", "3");
        bench.Says(Hall.AcidState, "running");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Says(Hall.AcidState, "stopped");
        bench.Pass(TimeSpan.FromMinutes(1));
        return bench;
    }

    private static Bench Running()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        return bench;
    }
}
