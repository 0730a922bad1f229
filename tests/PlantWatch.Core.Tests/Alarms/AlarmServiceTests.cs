using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>Putting away and latching: one-shot shelf, out of service, reset, re-alarm, on a circuit.</summary>
public sealed class AlarmServiceTests
{
    private const string Key = "R-011/main-ph";
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private readonly Bench _bench = new(Hall.Plan with
    {
        People = [new("o", "O. Invented", PersonRole.Operator), new("m", "M. Invented", PersonRole.Maintenance), new("d", "D. Invented", PersonRole.DutyManager)],
    });

    private AlarmRecord? Alarm => _bench.Alarm(RuleBook.AboveLimit, "main-ph");

    private void High(double minutes) => _bench.Hold(minutes * Minute, (Hall.Ph, 7.8));

    private void Well(double minutes) => _bench.Hold(minutes * Minute, (Hall.Ph, 7.4));

    private Outcome TakeOut(string key, string by = "M. Invented", string why = "cell is being rebuilt", TimeSpan? lasting = null) =>
        _bench.Run(at => new AlarmTakenOutOfService(at, key, by, why, lasting is { } span ? at + span : default));

    private Outcome Return(string key, string by = "M. Invented") => _bench.Run(at => new AlarmReturnedToService(at, key, by, "rebuilt"));

    [Fact]
    public void A_one_shot_shelf_ends_when_the_alarm_clears_and_keeps_its_reason_until_then()
    {
        High(3);
        _bench.Run(at => new AlarmShelved(at, Alarm!.Id, at + (4 * 60 * Minute), "J. Sample", "acid on its way", OneShot: true));
        Assert.Equal((AlarmState.Shelved, true, "acid on its way", "J. Sample"), (Alarm!.State, Alarm.OneShot, Alarm.ShelvedWhy, Alarm.ShelvedBy));
        Well(3);
        Assert.Equal((AlarmState.ReturnedUnacknowledged, false, (string?)null), (Alarm!.State, Alarm.OneShot, Alarm.ShelvedWhy));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Shelved, AlarmChange.Cleared, AlarmChange.Unshelved], _bench.Told(RuleBook.AboveLimit, "main-ph"));
        High(3);
        Assert.Equal(AlarmState.Unacknowledged, Alarm!.State);
    }

    [Fact]
    public void A_one_shot_shelf_ends_at_its_maximum_too()
    {
        High(3);
        _bench.Run(at => new AlarmShelved(at, Alarm!.Id, at + (30 * Minute), "J. Sample", "acid on its way", OneShot: true));
        High(31);
        Assert.Equal(AlarmState.Unacknowledged, Alarm!.State);
    }

    [Fact]
    public void A_shelf_without_a_reason_is_no_shelf()
    {
        High(3);
        Assert.IsType<Outcome.TurnedDown>(_bench.Run(at => new AlarmShelved(at, Alarm!.Id, at + Minute, "J. Sample", " ")));
        Assert.Equal(AlarmState.Unacknowledged, Alarm!.State);
    }

    [Fact]
    public void What_is_out_of_service_is_judged_and_recorded_and_comes_back_as_new()
    {
        Assert.IsType<Outcome.Done>(TakeOut(Key));
        Assert.Equal((AlarmState.OutOfService, "M. Invented", "cell is being rebuilt", _bench.Now), (Alarm!.State, Alarm.OutOfServiceBy, Alarm.OutOfServiceWhy, Alarm.OutOfServiceAt));
        Assert.NotEqual(Guid.Empty, Alarm.Id);
        High(3);
        Assert.Equal((AlarmState.OutOfService, true), (Alarm.State, Alarm.Active));
        _bench.Run(at => new AlarmAcknowledged(at, Alarm.Id, "J. Sample", null));
        _bench.Restart();
        Assert.Equal(AlarmState.OutOfService, Alarm.State);
        Assert.IsType<Outcome.Done>(Return(Key, "D. Invented"));
        Assert.Equal((AlarmState.Unacknowledged, (string?)null, (string?)null, false), (Alarm.State, Alarm.OutOfServiceBy, Alarm.OutOfServiceWhy, Alarm.OutOfServiceAt.IsSet));
        Assert.Equal([AlarmChange.TakenOutOfService, AlarmChange.Raised, AlarmChange.Acknowledged, AlarmChange.ReturnedToService], _bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact]
    public void Out_of_service_for_a_time_returns_by_itself_also_after_a_restart_and_is_told_as_new()
    {
        TakeOut(Key, lasting: 30 * Minute);
        Assert.Equal(_bench.Now + (30 * Minute), Alarm!.OutOfServiceUntil);
        High(29);
        _bench.Restart();
        Assert.Equal((AlarmState.OutOfService, true), (Alarm!.State, Alarm.Active));
        High(2);
        Assert.Equal((AlarmState.Unacknowledged, false, (string?)null), (Alarm!.State, Alarm.OutOfServiceUntil.IsSet, Alarm.OutOfServiceBy));
        Assert.Equal([AlarmChange.TakenOutOfService, AlarmChange.Raised, AlarmChange.ReturnedToService], _bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact]
    public void Out_of_service_for_a_time_that_is_over_is_turned_down()
    {
        Assert.IsType<Outcome.TurnedDown>(TakeOut(Key, lasting: -Minute));
        Assert.IsType<Outcome.TurnedDown>(TakeOut(Key, lasting: TimeSpan.Zero));
        Assert.Null(Alarm);
    }

    [Fact]
    public void Out_of_service_and_back_while_normal_leaves_nothing_but_the_record()
    {
        TakeOut(Key);
        Assert.IsType<Outcome.AlreadyDone>(TakeOut(Key));
        Return(Key);
        Assert.Null(Alarm);
        Assert.IsType<Outcome.AlreadyDone>(Return(Key));
        var told = _bench.AlarmsTold.ToArray();
        Assert.Equal([("M. Invented", "cell is being rebuilt"), ("M. Invented", "rebuilt")], told.Select(t => (t.By!, t.Comment!)));
    }

    [Theory]
    [InlineData(Key, "O. Invented", "why", TurnedDownKind.Conflict, "alarm.needs_maintenance")]
    [InlineData(Key, "Nobody", "why", TurnedDownKind.Conflict, "alarm.needs_maintenance")]
    [InlineData(Key, " ", "why", TurnedDownKind.Invalid, "field.required")]
    [InlineData(Key, "M. Invented", " ", TurnedDownKind.Invalid, "field.required")]
    [InlineData("R-001/main-ph", "D. Invented", "why", TurnedDownKind.Conflict, "alarm.never_out_of_service")]
    [InlineData("R-011/nobody", "M. Invented", "why", TurnedDownKind.NotFound, "alarm.not_watched")]
    [InlineData("R-999/main-ph", "M. Invented", "why", TurnedDownKind.NotFound, "alarm.not_watched")]
    [InlineData("R-011", "M. Invented", "why", TurnedDownKind.NotFound, "alarm.not_watched")]
    public void Not_everybody_takes_everything_out_of_service(string key, string by, string why, TurnedDownKind kind, string code)
    {
        var no = Assert.IsType<Outcome.TurnedDown>(TakeOut(key, by, why));
        Assert.Equal((kind, code), (no.Kind, no.Remarks[0].Reason.Code));
        Assert.Empty(_bench.State.Alarms);
    }

    [Fact]
    public void Where_the_plan_names_nobody_anybody_who_signs_may()
    {
        var bench = new Bench();
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmTakenOutOfService(at, Key, "Anybody", "rebuilt")));
    }

    [Fact]
    public void Only_who_may_take_it_out_returns_it()
    {
        TakeOut(Key);
        Assert.IsType<Outcome.TurnedDown>(Return(Key, "O. Invented"));
        Assert.Equal(AlarmState.OutOfService, Alarm!.State);
        Assert.Equal(TurnedDownKind.NotFound, Assert.IsType<Outcome.TurnedDown>(Return("R-011/nobody")).Kind);
    }

    [Fact, Evidence("R-001")]
    public void A_stop_that_came_back_by_itself_stays_latched_until_a_person_who_has_seen_it_resets_it()
    {
        _bench.Hold(2 * Minute, (Hall.Ph, 6.2));
        var stop = _bench.Alarm(RuleBook.StopPh, "main-ph")!;
        Assert.Equal("alarm.still_active", Assert.IsType<Outcome.TurnedDown>(Reset(stop.Id)).Remarks[0].Reason.Code);
        _bench.Hold(5 * Minute, (Hall.Ph, 7.4));
        Assert.Equal(AlarmState.LatchedUnacknowledged, _bench.Alarm(RuleBook.StopPh, "main-ph")!.State);
        Assert.Equal("alarm.acknowledge_first", Assert.IsType<Outcome.TurnedDown>(Reset(stop.Id)).Remarks[0].Reason.Code);
        _bench.Run(at => new AlarmAcknowledged(at, stop.Id, "J. Sample", "bathers were out"));
        Assert.Equal(AlarmState.LatchedAcknowledged, _bench.Alarm(RuleBook.StopPh, "main-ph")!.State);
        Assert.IsType<Outcome.Done>(Reset(stop.Id));
        Assert.Null(_bench.Alarm(RuleBook.StopPh, "main-ph"));
        Assert.Equal(("J. Sample", "well again"), (_bench.AlarmsTold.Last().By, _bench.AlarmsTold.Last().Comment));
    }

    [Fact]
    public void What_does_not_latch_has_nothing_to_reset()
    {
        High(3);
        Assert.Equal("alarm.not_latched", Assert.IsType<Outcome.TurnedDown>(Reset(Alarm!.Id)).Remarks[0].Reason.Code);
    }

    [Fact, Evidence("R-011")]
    public void What_stands_for_a_shift_annunciates_as_new_and_is_counted()
    {
        High(3);
        var first = Alarm!;
        High(60);
        _bench.Run(at => new AlarmAcknowledged(at, first.Id, "J. Sample", "on it"));
        High(479);
        Assert.Equal((AlarmState.Acknowledged, 0), (Alarm!.State, Alarm.ReAlarms));
        High(2);
        Assert.Equal((AlarmState.Unacknowledged, 1, first.Id, first.Order, first.RaisedAt), (Alarm!.State, Alarm.ReAlarms, Alarm.Id, Alarm.Order, Alarm.RaisedAt));
        Assert.Equal(AlarmChange.ReAlarmed, _bench.Told(RuleBook.AboveLimit, "main-ph")[^1]);
        High(481);
        Assert.Equal(2, Alarm!.ReAlarms);
        Well(3);
        High(3);
        Assert.Equal(0, Alarm!.ReAlarms);
    }

    [Fact]
    public void The_times_after_which_an_alarm_speaks_again_are_by_its_priority()
    {
        var hours = RuleBook.All.Values.GroupBy(r => r.Priority).ToDictionary(g => g.Key, g => g.Select(r => r.ReAlarmAfter?.TotalHours).Distinct().Order().ToArray());
        Assert.Equal([1, 8], hours[Priority.Critical]);
        Assert.Equal([4], hours[Priority.High]);
        Assert.Equal([8], hours[Priority.Medium]);
        Assert.Equal([null], hours[Priority.Low]);
        Assert.Equal(8, RuleBook.IncidentOpen.ReAlarmAfter?.TotalHours);
    }

    private Outcome Reset(Guid id) => _bench.Run(at => new AlarmReset(at, id, "J. Sample", "well again"));
}
