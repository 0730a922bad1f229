using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>What people do with an alarm, and what the plant file does to it.</summary>
public sealed class AlarmHandlingTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private readonly Bench bench = new();

    public AlarmHandlingTests() => bench.Hold(3 * Minute, (Hall.Ph, 7.8));

    private AlarmRecord Alarm => bench.Alarm(RuleBook.AboveLimit, "main-ph")!;

    [Fact]
    public void Acknowledging_keeps_who_when_and_the_words_and_twice_is_harmless()
    {
        var id = Alarm.Id;
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmAcknowledged(at, id, "J. Sample", "acid ran out")));
        var acknowledged = (Alarm.State, Alarm.AcknowledgedBy, Alarm.Comment, Alarm.AcknowledgedAt);
        Assert.Equal((AlarmState.Acknowledged, "J. Sample", "acid ran out", bench.Now), acknowledged);
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new AlarmAcknowledged(at, id, "R. Example", "me too")));
        Assert.Equal("J. Sample", Alarm.AcknowledgedBy);
        var told = bench.AlarmsTold.Last(e => e.Change == AlarmChange.Acknowledged);
        Assert.Equal(("J. Sample", "acid ran out"), (told.By, told.Comment));
    }

    [Fact]
    public void An_alarm_that_comes_back_is_a_new_occurrence_that_nobody_has_seen()
    {
        var first = Alarm.Id;
        bench.Run(at => new AlarmAcknowledged(at, first, "J. Sample", null));
        bench.Hold(3 * Minute, (Hall.Ph, 7.4));
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph"));
        bench.Hold(3 * Minute, (Hall.Ph, 7.8));
        Assert.NotEqual(first, Alarm.Id);
        Assert.Equal((AlarmState.Unacknowledged, (string?)null), (Alarm.State, Alarm.AcknowledgedBy));
        Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new AlarmAcknowledged(at, first, "J. Sample", null)));
    }

    [Fact]
    public void A_shelf_ends_by_itself_and_what_is_still_in_alarm_annunciates_as_new()
    {
        bench.Run(at => new AlarmAcknowledged(at, Alarm.Id, "J. Sample", "seen"));
        bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        bench.Hold(29 * Minute, (Hall.Ph, 7.8));
        Assert.Equal(AlarmState.Shelved, Alarm.State);
        bench.Hold(2 * Minute, (Hall.Ph, 7.8));
        Assert.Equal((AlarmState.Unacknowledged, (string?)null, (string?)null), (Alarm.State, Alarm.AcknowledgedBy, Alarm.ShelvedBy));
        Assert.Equal(AlarmChange.Unshelved, bench.Told(RuleBook.AboveLimit, "main-ph")[^1]);
    }

    [Fact]
    public void A_shelf_survives_a_restart_and_ends_at_the_same_time()
    {
        bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        var until = Alarm.ShelvedUntil;
        bench.Restart();
        Assert.Equal((AlarmState.Shelved, until), (Alarm.State, Alarm.ShelvedUntil));
        bench.Pass(31 * Minute);
        Assert.Equal(AlarmState.Unacknowledged, Alarm.State);
    }

    [Fact]
    public void A_shelf_is_never_longer_than_a_shift_and_never_in_the_past()
    {
        foreach (var span in new[] { AlarmLife.LongestShelf + Minute, TimeSpan.Zero, -Minute })
            Assert.Equal(TurnedDownKind.Invalid, Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new AlarmShelved(at, Alarm.Id, at + span, "J. Sample", "noise"))).Kind);
        Assert.Equal(AlarmState.Unacknowledged, Alarm.State);
    }

    [Fact]
    public void Off_the_shelf_what_cleared_meanwhile_is_still_to_be_seen()
    {
        bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        bench.Hold(5 * Minute, (Hall.Ph, 7.4));
        bench.Run(at => new AlarmUnshelved(at, Alarm.Id, "J. Sample"));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Alarm.State);
    }

    [Fact]
    public void An_alarm_of_a_probe_that_is_taken_out_of_the_plant_file_is_retired_in_the_record()
    {
        bench.Load(Hall.Plan.Without("main-ph"));
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph"));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Retired], bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact]
    public void An_alarm_of_a_probe_that_is_renamed_stays_the_same_occurrence()
    {
        var before = Alarm;
        bench.Run(at => new AlarmAcknowledged(at, before.Id, "J. Sample", "seen"));
        bench.Load(Hall.Plan.With("main-ph", p => p with { Id = "main-ph-2", Was = "main-ph" }));
        var after = bench.Alarm(RuleBook.AboveLimit, "main-ph-2")!;
        Assert.Equal((before.Id, AlarmState.Acknowledged), (after.Id, after.State));
        bench.Hold(3 * Minute, (Hall.Ph, 7.4));
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph-2"));
    }

    [Fact]
    public void Only_what_was_told_as_raised_is_ever_told_again()
    {
        // Pending towards an alarm, then no flow, then flow: nothing happened that anybody could have seen.
        var quiet = new Bench();
        quiet.Hold(Minute, (Hall.Flow, 1), (Hall.Ph, 7.8));
        quiet.Says(Hall.Flow, "0");
        quiet.Says(Hall.Flow, "1");
        Assert.DoesNotContain(quiet.AlarmsTold, e => e.Alarm.Id == Guid.Empty);
        Assert.Empty(quiet.Told(RuleBook.AboveLimit, "main-ph"));
    }
}
