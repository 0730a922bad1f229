using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Alarms;

/// <summary>What people and the plant's design do with an alarm. Whether they may is said by <see cref="AlarmRequests"/> and by the rule.</summary>
public static partial class AlarmLife
{
    /// <summary>A person has seen it.</summary>
    public static AlarmRecord Acknowledge(AlarmRecord alarm, Instant at, string by, string? comment) =>
        alarm with { IsAcknowledged = true, AcknowledgedBy = by, AcknowledgedAt = at, Comment = comment };

    /// <summary>A person resets the latch of what is gone and seen.</summary>
    public static AlarmRecord Reset(AlarmRecord alarm) => alarm with { LatchHeld = false };

    /// <summary>A person has recorded that the plant was made safe.</summary>
    public static AlarmRecord MakeSafe(AlarmRecord alarm, Instant at, string by, string? comment) => alarm with { MadeSafe = new MadeSafe(by, at, comment) };

    /// <summary>A person shelves it.</summary>
    /// <param name="oneShot">The shelf ends when the alarm next clears, or at its time, whichever is first.</param>
    public static AlarmRecord Shelve(AlarmRecord alarm, Instant until, string by, string why, bool oneShot) =>
        alarm with { ShelvedUntil = until, ShelvedBy = by, ShelvedWhy = why, OneShot = oneShot };

    /// <summary>It comes off the shelf; still active, it annunciates as new.</summary>
    public static AlarmRecord OffShelf(AlarmRecord alarm, Instant at) =>
        Back(alarm with { ShelvedUntil = Instant.Never, ShelvedBy = null, ShelvedWhy = null, OneShot = false }, at);

    /// <summary>Design suppresses it. What was pending rests on water that is not the pool's: it starts anew afterwards.</summary>
    public static AlarmRecord Suppress(AlarmRecord alarm, Reason by) =>
        alarm with { Suppressed = true, SuppressedBy = by, PendingSince = alarm.Suppressed ? alarm.PendingSince : Instant.Never };

    /// <summary>Design releases it; still active, it annunciates as new.</summary>
    public static AlarmRecord Release(AlarmRecord alarm, Instant at) =>
        Back(alarm with { Suppressed = false, SuppressedBy = null, PendingSince = Instant.Never }, at);

    /// <summary>A person takes it out of service.</summary>
    /// <param name="until">It returns by itself then; never means that a person returns it.</param>
    public static AlarmRecord TakeOut(AlarmRecord alarm, Instant at, Instant until, string by, string why) =>
        alarm with { OutOfService = true, OutOfServiceBy = by, OutOfServiceAt = at, OutOfServiceWhy = why, OutOfServiceUntil = until };

    /// <summary>A person, or its time, returns it to service; still active, it annunciates as new.</summary>
    public static AlarmRecord Return(AlarmRecord alarm, Instant at) =>
        Back(alarm with { OutOfService = false, OutOfServiceBy = null, OutOfServiceAt = Instant.Never, OutOfServiceWhy = null, OutOfServiceUntil = Instant.Never }, at);

    /// <summary>The plant file no longer names what it watched: nothing looks at it any more, and what it was about may be there all the same. Its latch holds, in everybody's eyes, until a person resets it.</summary>
    public static AlarmRecord Bereave(AlarmRecord alarm, Instant at)
    {
        var seen = alarm with
        {
            Active = false, PendingSince = Instant.Never, Suppressed = false, SuppressedBy = null, ShelvedUntil = Instant.Never, ShelvedBy = null, ShelvedWhy = null, OneShot = false,
        };
        return Return(alarm.Active ? seen with { ClearedAt = at } : seen, at);
    }

    // Back into the eyes of people: A or B by the condition of the moment. What cleared unseen stays to be seen.
    private static AlarmRecord Back(AlarmRecord alarm, Instant at) => alarm.Active ? AsNew(alarm, at) : alarm;
}
