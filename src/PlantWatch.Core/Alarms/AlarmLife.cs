using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms;

/// <summary>How one alarm moves. Pure: no timers inside, time is an argument, delays run on the watermark.</summary>
public static class AlarmLife
{
    /// <summary>Longest time on the shelf.</summary>
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

    /// <summary>Time went on: what is pending may be due, a shelf may end.</summary>
    /// <remarks>
    /// Time alone raises, and clears what stays as it was last said, like a switch. A measured value clears only by a reading: one good number
    /// and then silence is no proof that the water came back.
    /// </remarks>
    public static (AlarmRecord Next, AlarmChange Change) Wait(AlarmRecord alarm, Rule rule, Instant watermark)
    {
        if (alarm.ShelvedUntil.IsSet && alarm.ShelvedUntil <= watermark) return (OffShelf(alarm), AlarmChange.Unshelved);
        if (alarm.Active && rule.ClearsByReading) return (alarm, AlarmChange.None);
        return alarm.PendingSince.IsSet ? Look(alarm, rule, !alarm.Active, watermark) : (alarm, AlarmChange.None);
    }

    /// <summary>It stands, but for another cause: it annunciates as new.</summary>
    public static AlarmRecord Anew(AlarmRecord alarm, Instant at) => Raise(alarm, at);

    /// <summary>A person has seen it.</summary>
    public static AlarmRecord Acknowledge(AlarmRecord alarm, Instant at, string by, string? comment) =>
        alarm with { IsAcknowledged = true, AcknowledgedBy = by, AcknowledgedAt = at, Comment = comment };

    /// <summary>A person shelves it.</summary>
    public static AlarmRecord Shelve(AlarmRecord alarm, Instant until, string by) => alarm with { ShelvedUntil = until, ShelvedBy = by };

    /// <summary>It comes off the shelf; still active, it annunciates as new.</summary>
    public static AlarmRecord OffShelf(AlarmRecord alarm)
    {
        var off = alarm with { ShelvedUntil = Instant.Never, ShelvedBy = null };
        return alarm.Active ? off with { IsAcknowledged = false, AcknowledgedBy = null, AcknowledgedAt = Instant.Never, Comment = null } : off;
    }

    /// <summary>Nothing of it needs to be remembered.</summary>
    public static bool IsOver(AlarmRecord alarm) =>
        alarm is { Active: false, IsAcknowledged: true, LatchHeld: false, Suppressed: false, OutOfService: false }
        && !alarm.ShelvedUntil.IsSet && !alarm.PendingSince.IsSet;

    private static AlarmRecord Raise(AlarmRecord alarm, Instant at) => alarm with
    {
        Active = true,
        IsAcknowledged = false,
        LatchHeld = alarm.Latches,
        PendingSince = Instant.Never,
        RaisedAt = at,
        ClearedAt = Instant.Never,
        AcknowledgedBy = null,
        AcknowledgedAt = Instant.Never,
        Comment = null,
    };

    private static AlarmRecord Clear(AlarmRecord alarm, Instant at) =>
        alarm with { Active = false, PendingSince = Instant.Never, ClearedAt = at };
}
