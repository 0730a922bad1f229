using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Maintenance;

/// <summary>Days replayed: a repair is confirmed by what the plant's signals do after it, and by nobody's word.</summary>
public sealed class JobEffectTests
{
    private readonly Bench _bench = new();
    private readonly Guid _id = TimeOrderedId.Derive(Hall.Nine, "job");

    [Fact]
    public void A_repair_after_which_the_pump_runs_without_fault_for_a_day_has_helped()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Open);
        Hours(3);
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        Hours(23);
        Assert.Empty(Effects);
        Hours(2);
        Assert.Equal((JobEffect.Helped, "R-030/acid-pump"), (Effects.Single().Effect, Effects.Single().Signs.Single()));
        Assert.Empty(_bench.State.Jobs);
    }

    [Fact]
    public void A_fault_that_comes_back_says_that_the_repair_did_not_help_and_the_job_stays()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        Hours(5);
        _bench.Says(Hall.AcidState, "fault");
        Hours(1);
        Assert.Equal(JobEffect.DidNotHelp, Effects.Single().Effect);
        Assert.Equal(JobEffect.DidNotHelp, _bench.State.Jobs[_id].Effect);
        Hours(48);
        Assert.Single(Effects);

        Write(JobState.Done, "new diaphragm too");
        _bench.Says(Hall.AcidState, "running");
        Hours(25);
        Assert.Equal([JobEffect.DidNotHelp, JobEffect.Helped], Effects.Select(e => e.Effect));
    }

    [Fact]
    public void A_fault_that_flickers_in_the_first_hour_has_not_come_back_yet()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        _bench.Pass(TimeSpan.FromMinutes(20));
        _bench.Says(Hall.AcidState, "fault");
        _bench.Pass(TimeSpan.FromMinutes(10));
        Assert.Empty(Effects);
        _bench.Says(Hall.AcidState, "running");
        Hours(25);
        Assert.Equal(JobEffect.Helped, Effects.Single().Effect);
    }

    [Fact]
    public void A_fault_that_never_goes_away_did_not_get_help_by_a_day_later()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Done);
        Hours(25);
        Assert.Equal(JobEffect.DidNotHelp, Effects.Single().Effect);
    }

    [Fact]
    public void A_pump_that_has_not_run_since_proves_nothing_and_after_a_week_nothing_is_waited_for()
    {
        _bench.Says(Hall.AcidState, "fault");
        _bench.Says(Hall.AcidState, "stopped");
        Write(JobState.Done);
        for (var day = 0; day < 6; day++) Hours(24);
        Assert.Empty(Effects);
        Hours(30);
        Assert.Equal(JobEffect.CannotTell, Effects.Single().Effect);
    }

    [Fact]
    public void What_no_signal_spoke_of_no_signal_confirms()
    {
        _bench.Says(Hall.AcidState, "stopped");
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        Hours(25);
        Assert.Equal(JobEffect.CannotTell, Effects.Single().Effect);
    }

    [Fact]
    public void An_alarm_out_of_service_cannot_say_that_a_repair_helped()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        _bench.Run(at => new AlarmTakenOutOfService(at, RuleBook.PumpFault.KeyFor("acid-pump"), "J. Sample", "wiring is being renewed"));
        Hours(30);
        Assert.Empty(Effects);
        _bench.Run(at => new AlarmReturnedToService(at, RuleBook.PumpFault.KeyFor("acid-pump"), "J. Sample", "done"));
        Hours(25);
        Assert.Equal(JobEffect.Helped, Effects.Single().Effect);
    }

    [Fact]
    public void A_restart_forgets_nothing_of_it()
    {
        _bench.Says(Hall.AcidState, "fault");
        Write(JobState.Done);
        _bench.Says(Hall.AcidState, "running");
        Hours(20);
        _bench.Restart();
        Hours(5);
        Assert.Equal(JobEffect.Helped, Effects.Single().Effect);
    }

    private List<JobEffectEntry> Effects => [.. _bench.Entries.Select(e => e.Body).OfType<JobEffectEntry>()];

    private void Hours(int hours)
    {
        for (var i = 0; i < hours * 2; i++)
        {
            _bench.Skip(TimeSpan.FromMinutes(30));
            _bench.Tick();
        }
    }

    private void Write(JobState state, string done = "hose clipped") =>
        Assert.IsType<Outcome.Done>(_bench.Run(at => new JobWritten(at, new Job(_id, "acid-pump", "no stroke", state == JobState.Done ? done : null, state, null, "M. Invented", at))));
}
