using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>What people do with an alarm, and what the plant file does to it.</summary>
public sealed class AlarmHandlingTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private readonly Bench _bench = new();

    public AlarmHandlingTests() => _bench.Hold(3 * Minute, (Hall.Ph, 7.8));

    private AlarmRecord Alarm => _bench.Alarm(RuleBook.AboveLimit, "main-ph")!;

    [Fact]
    public void Acknowledging_keeps_who_when_and_the_words_and_twice_is_harmless()
    {
        var id = Alarm.Id;
        Assert.IsType<Outcome.Done>(_bench.Run(at => new AlarmAcknowledged(at, id, "J. Sample", "acid ran out")));
        var acknowledged = (Alarm.State, Alarm.AcknowledgedBy, Alarm.Comment, Alarm.AcknowledgedAt);
        Assert.Equal((AlarmState.Acknowledged, "J. Sample", "acid ran out", _bench.Now), acknowledged);
        Assert.IsType<Outcome.AlreadyDone>(_bench.Run(at => new AlarmAcknowledged(at, id, "R. Example", "me too")));
        Assert.Equal("J. Sample", Alarm.AcknowledgedBy);
        var told = _bench.AlarmsTold.Last(e => e.Change == AlarmChange.Acknowledged);
        Assert.Equal(("J. Sample", "acid ran out"), (told.By, told.Comment));
    }

    [Fact]
    public void An_alarm_that_comes_back_is_a_new_occurrence_that_nobody_has_seen()
    {
        var first = Alarm.Id;
        _bench.Run(at => new AlarmAcknowledged(at, first, "J. Sample", null));
        _bench.Hold(3 * Minute, (Hall.Ph, 7.4));
        Assert.Null(_bench.Alarm(RuleBook.AboveLimit, "main-ph"));
        _bench.Hold(3 * Minute, (Hall.Ph, 7.8));
        Assert.NotEqual(first, Alarm.Id);
        Assert.Equal((AlarmState.Unacknowledged, (string?)null), (Alarm.State, Alarm.AcknowledgedBy));
        Assert.IsType<Outcome.TurnedDown>(_bench.Run(at => new AlarmAcknowledged(at, first, "J. Sample", null)));
    }

    [Fact]
    public void A_shelf_ends_by_itself_and_what_is_still_in_alarm_annunciates_as_new()
    {
        _bench.Run(at => new AlarmAcknowledged(at, Alarm.Id, "J. Sample", "seen"));
        _bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        _bench.Hold(29 * Minute, (Hall.Ph, 7.8));
        Assert.Equal(AlarmState.Shelved, Alarm.State);
        _bench.Hold(2 * Minute, (Hall.Ph, 7.8));
        Assert.Equal((AlarmState.Unacknowledged, (string?)null, (string?)null), (Alarm.State, Alarm.AcknowledgedBy, Alarm.ShelvedBy));
        Assert.Equal(AlarmChange.Unshelved, _bench.Told(RuleBook.AboveLimit, "main-ph")[^1]);
    }

    [Fact]
    public void A_shelf_survives_a_restart_and_ends_at_the_same_time()
    {
        _bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        var until = Alarm.ShelvedUntil;
        _bench.Restart();
        Assert.Equal((AlarmState.Shelved, until), (Alarm.State, Alarm.ShelvedUntil));
        _bench.Pass(31 * Minute);
        Assert.Equal(AlarmState.Unacknowledged, Alarm.State);
    }

    [Fact]
    public void A_shelf_is_never_longer_than_a_shift_and_never_in_the_past()
    {
        foreach (var span in new[] { AlarmLife.LongestShelf + Minute, TimeSpan.Zero, -Minute })
            Assert.Equal(TurnedDownKind.Invalid, Assert.IsType<Outcome.TurnedDown>(_bench.Run(at => new AlarmShelved(at, Alarm.Id, at + span, "J. Sample", "noise"))).Kind);
        Assert.Equal(AlarmState.Unacknowledged, Alarm.State);
    }

    [Fact]
    public void Off_the_shelf_what_cleared_meanwhile_is_still_to_be_seen()
    {
        _bench.Run(at => new AlarmShelved(at, Alarm.Id, at + (30 * Minute), "J. Sample", "changing the drum"));
        _bench.Hold(5 * Minute, (Hall.Ph, 7.4));
        _bench.Run(at => new AlarmUnshelved(at, Alarm.Id, "J. Sample"));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Alarm.State);
    }

    [Fact]
    public void An_alarm_of_a_probe_that_is_taken_out_of_the_plant_file_is_retired_in_the_record()
    {
        _bench.Load(Hall.Plan.Without("main-ph"));
        Assert.Null(_bench.Alarm(RuleBook.AboveLimit, "main-ph"));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Retired], _bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact]
    public void An_alarm_of_a_probe_that_is_renamed_stays_the_same_occurrence()
    {
        var before = Alarm;
        _bench.Run(at => new AlarmAcknowledged(at, before.Id, "J. Sample", "seen"));
        _bench.Load(Hall.Plan.With("main-ph", p => p with { Id = "main-ph-2", Was = "main-ph" }));
        var after = _bench.Alarm(RuleBook.AboveLimit, "main-ph-2")!;
        Assert.Equal((before.Id, AlarmState.Acknowledged), (after.Id, after.State));
        _bench.Hold(3 * Minute, (Hall.Ph, 7.4));
        Assert.Null(_bench.Alarm(RuleBook.AboveLimit, "main-ph-2"));
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
