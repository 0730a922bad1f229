using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>What is to be told now, to whom and by which way. Pure: the same alarms, past and time give the same messages.</summary>
/// <remarks>
/// It looks at what stands and what was told, not at what happened since: nothing that happens between two looks, a crash included, takes a message away or
/// makes a second one of it.
/// </remarks>
public sealed class TellingPolicy(TellingPlan plan, string timeZone)
{
    private readonly Duty _duty = new(plan, timeZone);

    /// <summary>The messages that are owed.</summary>
    /// <param name="live">The live alarms.</param>
    /// <param name="told">What was told, at least of every alarm that is live or whose end was not told.</param>
    /// <param name="now">The time.</param>
    public Owed Next(IReadOnlyCollection<AlarmRecord> live, IReadOnlyCollection<Notice> told, Instant now)
    {
        ArgumentNullException.ThrowIfNull(live);
        ArgumentNullException.ThrowIfNull(told);
        var look = new Look(live, told, now);
        foreach (var alarm in live) Raise(alarm, look);
        foreach (var raised in told.Where(notice => notice.Kind == NoticeKind.Raised)) FollowUp(raised, look);
        return look.Owed;
    }

    private void Raise(AlarmRecord alarm, Look look)
    {
        if (!Asks(alarm) || Annunciation.IsSpokenFor(alarm, look.Find)) return;
        var start = _duty.MayGo(alarm.Priority, alarm.AnnunciatedAt);
        for (var step = 0; DueOf(alarm.Priority, step, start) is { IsSet: true } due; step++)
        {
            if (step > 0 && !CanBePassedOn(alarm)) break;
            if (!IsTime(alarm.Priority, due, look)) break;
            foreach (var channel in plan.Channels)
                if (channel.Takes(alarm.Priority) && (channel.SpeaksToPersons || step == 0)) Tell(alarm, step, channel, look);
        }
    }

    // A low or medium alarm that is over before anybody was told asks for nothing any more; a high one that came and went does.
    private static bool Asks(AlarmRecord alarm) => alarm.Priority > Priority.Note && alarm.State switch
    {
        AlarmState.Unacknowledged or AlarmState.LatchedUnacknowledged => true,
        AlarmState.ReturnedUnacknowledged => alarm.Priority >= Priority.High,
        _ => false,
    };

    private static bool CanBePassedOn(AlarmRecord alarm) => alarm.State != AlarmState.ReturnedUnacknowledged;

    private Instant DueOf(Priority priority, int step, Instant start)
    {
        if (step == 0) return start;
        if (step > plan.Escalation.Length || TellingPlan.Patience(priority) is not { } patience) return Instant.Never;
        return start + (patience * step);
    }

    private void Tell(AlarmRecord alarm, int step, ChannelPlan channel, Look look)
    {
        if (look.WasRaised(alarm, step, channel.Id) || IsOf(alarm, channel)) return;
        foreach (var person in channel.SpeaksToPersons ? _duty.At(step, look.Now).Cast<string?>() : [null])
            look.Add(new()
            {
                Alarm = alarm.Id, Key = alarm.Key, Kind = NoticeKind.Raised, Priority = alarm.Priority, AnnunciatedAt = alarm.AnnunciatedAt,
                Step = step, Channel = channel.Id, Person = person, Consequences = look.ConsequencesOf(alarm.Key),
            });
    }

    // That a way is blocked is told by the others: by itself it would arrive when it is open again, and say the contrary.
    private static bool IsOf(AlarmRecord alarm, ChannelPlan channel) => alarm.Rule == RuleBook.ChannelFails.Number && alarm.Subject == channel.Id;

    // Whoever was sent for is told when another person has taken it and when it is over; a channel that is gone from the plan can be told nothing.
    private void FollowUp(Notice raised, Look look)
    {
        if (!plan.Channels.Any(channel => channel.Id == raised.Channel)) return;
        var alarm = look.Find(raised.Alarm);
        if (IsPutAway(alarm)) return;
        if (alarm is null && look.Find(raised.Key) is { } next && StillStands(next)) return;
        if (alarm is null || !StillStands(alarm)) After(raised, NoticeKind.Cleared, alarm?.ClearedAt ?? Instant.Never, look);
        else if (alarm.IsAcknowledged && alarm.AnnunciatedAt == raised.AnnunciatedAt) After(raised, NoticeKind.Acknowledged, alarm.AcknowledgedAt, look);
    }

    // A latch that holds is not over, and neither is what stands on as another occurrence.
    private static bool StillStands(AlarmRecord alarm) => alarm.Active || alarm.LatchHeld;

    private static bool IsPutAway(AlarmRecord? alarm) => alarm?.State is AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService;

    private void After(Notice raised, NoticeKind kind, Instant happened, Look look)
    {
        var notice = raised with { Kind = kind, Step = 0, AnnunciatedAt = kind == NoticeKind.Cleared ? look.FirstOf(raised) : raised.AnnunciatedAt, Consequences = [] };
        if (look.Knows(notice)) return;
        if (IsTime(raised.Priority, happened, look)) look.Add(notice);
    }

    // Due by day and looked at by night, after a stop, is still a message that waits for the morning.
    private bool IsTime(Priority priority, Instant due, Look look) => look.IsTime(_duty.MayGo(priority, Instant.Later(due, look.Now)));
}
