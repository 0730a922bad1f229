using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms;

/// <summary>How one alarm moves: every transition of IEC 62682 / ISA-18.2, and nothing else moves one. Pure: no timers inside, time is an argument, delays run on the watermark.</summary>
public static partial class AlarmLife
{
    /// <summary>Longest time on the shelf, also of one that ends when the alarm clears.</summary>
    public static readonly TimeSpan LongestShelf = TimeSpan.FromHours(8);

    /// <summary>The condition was looked at: holds or not.</summary>
    public static (AlarmRecord Next, AlarmChange Change) Look(AlarmRecord alarm, Rule rule, bool holds, Instant at)
    {
        if (holds == alarm.Active)
            return (alarm.PendingSince.IsSet ? alarm with { PendingSince = Instant.Never } : alarm, AlarmChange.None);
        var since = alarm.PendingSince.IsSet ? alarm.PendingSince : at;
        if (at - since < (holds ? rule.OnDelay : rule.OffDelay))
            return (alarm.PendingSince.IsSet ? alarm : alarm with { PendingSince = since }, AlarmChange.None);
        return holds ? (Raise(alarm, at), AlarmChange.Raised) : (Clear(alarm, at), AlarmChange.Cleared);
    }

    /// <summary>Time went on: a time out of service or a shelf may end, what is pending may be due, what stands long may annunciate anew. One of them at a time.</summary>
    /// <remarks>
    /// Time alone raises, and clears what stays as it was last said, like a switch. A measured value clears only by a reading: one good number
    /// and then silence is no proof that the water came back.
    /// </remarks>
    public static (AlarmRecord Next, AlarmChange Change) Wait(AlarmRecord alarm, Rule rule, Instant watermark)
    {
        if (alarm.OutOfService && alarm.OutOfServiceUntil.IsSet && alarm.OutOfServiceUntil <= watermark) return (Return(alarm, watermark), AlarmChange.ReturnedToService);
        if (IsShelfOver(alarm, watermark)) return (OffShelf(alarm, watermark), AlarmChange.Unshelved);
        if (alarm.PendingSince.IsSet && !(alarm.Active && rule.ClearsByReading))
            if (Look(alarm, rule, !alarm.Active, watermark) is (var next, not AlarmChange.None and var change)) return (next, change);
        return IsDueAgain(alarm, rule, watermark) ? (Again(alarm, watermark), AlarmChange.ReAlarmed) : (alarm, AlarmChange.None);
    }

    /// <summary>It stands, but for another cause: it annunciates as new.</summary>
    public static AlarmRecord Anew(AlarmRecord alarm, Instant at) => Raise(alarm, at);

    /// <summary>Nothing of it needs to be remembered. What suppresses it is asked anew whenever there is something to suppress.</summary>
    public static bool IsOver(AlarmRecord alarm) =>
        alarm is { Active: false, IsAcknowledged: true, LatchHeld: false, OutOfService: false } && !alarm.ShelvedUntil.IsSet && !alarm.PendingSince.IsSet;

    // A time that no shelving can have set comes from a broken memory: unknown means unshelved.
    private static bool IsShelfOver(AlarmRecord alarm, Instant now) =>
        alarm.ShelvedUntil.IsSet && (alarm.ShelvedUntil <= now || alarm.ShelvedUntil - now > LongestShelf);

    private static bool IsDueAgain(AlarmRecord alarm, Rule rule, Instant now) =>
        alarm.State is AlarmState.Unacknowledged or AlarmState.Acknowledged && rule.ReAlarmAfter is { } after
        && now - Instant.Later(alarm.AnnunciatedAt, alarm.AcknowledgedAt) >= after;

    private static AlarmRecord Again(AlarmRecord alarm, Instant at) => AsNew(alarm, at) with { ReAlarms = alarm.ReAlarms + 1 };

    private static AlarmRecord Raise(AlarmRecord alarm, Instant at) => AsNew(alarm, at) with
    {
        Active = true,
        LatchHeld = alarm.Latches,
        PendingSince = Instant.Never,
        RaisedAt = at,
        ClearedAt = Instant.Never,
        ReAlarms = 0,
        MadeSafe = null,
    };

    private static AlarmRecord Clear(AlarmRecord alarm, Instant at)
    {
        var cleared = alarm with { Active = false, PendingSince = Instant.Never, ClearedAt = at };
        return alarm.OneShot ? OffShelf(cleared, at) : cleared;
    }

    // Nobody has seen this one.
    private static AlarmRecord AsNew(AlarmRecord alarm, Instant at) =>
        alarm with { IsAcknowledged = false, AcknowledgedBy = null, AcknowledgedAt = Instant.Never, Comment = null, AnnunciatedAt = at };
}
