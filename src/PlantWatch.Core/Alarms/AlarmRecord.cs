using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Alarms;

/// <summary>Alarm states of IEC 62682 / ISA-18.2, always derived from independent facts and never stored by themselves.</summary>
public enum AlarmState
{
    /// <summary>Normal (A).</summary>
    Normal = 0,
    /// <summary>Active, unacknowledged (B).</summary>
    Unacknowledged,
    /// <summary>Active, acknowledged (C).</summary>
    Acknowledged,
    /// <summary>Returned to normal, unacknowledged (D).</summary>
    ReturnedUnacknowledged,
    /// <summary>Latched, unacknowledged (E).</summary>
    LatchedUnacknowledged,
    /// <summary>Latched, acknowledged (F).</summary>
    LatchedAcknowledged,
    /// <summary>Shelved by a person for a time (G).</summary>
    Shelved,
    /// <summary>Suppressed by design (H).</summary>
    SuppressedByDesign,
    /// <summary>Out of service (I).</summary>
    OutOfService,
}

/// <summary>What changed an alarm.</summary>
public enum AlarmChange
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>Its condition has held for the on-delay.</summary>
    Raised,
    /// <summary>Its condition has been gone for the off-delay.</summary>
    Cleared,
    /// <summary>A person acknowledged it.</summary>
    Acknowledged,
    /// <summary>A person shelved it.</summary>
    Shelved,
    /// <summary>It came off the shelf, by a person or by time.</summary>
    Unshelved,
    /// <summary>Design suppressed it.</summary>
    Suppressed,
    /// <summary>Design released it.</summary>
    Released,
    /// <summary>A person reset the latch.</summary>
    Reset,
    /// <summary>What it watched is gone from the plant file.</summary>
    Retired,
    /// <summary>A person took it out of service.</summary>
    TakenOutOfService,
    /// <summary>A person, or its time, returned it to service.</summary>
    ReturnedToService,
    /// <summary>It still stands, and annunciates as new.</summary>
    ReAlarmed,
    /// <summary>A person recorded that the plant was made safe.</summary>
    MadeSafe,
}

/// <summary>The independent facts of one alarm, from which its state follows. The default is a normal alarm that never happened.</summary>
public sealed record AlarmRecord
{
    /// <summary>UUIDv7 of this occurrence; a new one each time it is raised from normal.</summary>
    public Guid Id { get; init; }

    /// <summary>What it watches: rule number and subject, such as <c>R-010/main-ph</c>. One live alarm a key.</summary>
    public required string Key { get; init; }

    /// <summary>Number of the rule in docs/rules.md.</summary>
    public required string Rule { get; init; }

    /// <summary>Pool, probe or pump it is about.</summary>
    public required string Subject { get; init; }

    /// <summary>Its priority.</summary>
    public Priority Priority { get; init; }

    /// <summary>Cause with figures, in the words of its rule.</summary>
    public required Reason Cause { get; init; }

    /// <summary>The condition holds (after on-delay, until off-delay).</summary>
    public bool Active { get; init; }

    /// <summary>A person has seen it.</summary>
    public bool IsAcknowledged { get; init; } = true;

    /// <summary>It latches: stays until reset even when the condition is gone.</summary>
    public bool Latches { get; init; }

    /// <summary>The latch holds.</summary>
    public bool LatchHeld { get; init; }

    /// <summary>What was recorded of making safe, for this raising; null while nothing was.</summary>
    public MadeSafe? MadeSafe { get; init; }

    /// <summary>Shelved until then; never means not shelved.</summary>
    public Instant ShelvedUntil { get; init; }

    /// <summary>Suppressed by design at the moment.</summary>
    public bool Suppressed { get; init; }

    /// <summary>Taken out of service.</summary>
    public bool OutOfService { get; init; }

    /// <summary>The condition has been pending (towards raise or clear) since then; never means it agrees with <see cref="Active"/>.</summary>
    public Instant PendingSince { get; init; }

    /// <summary>When it was raised.</summary>
    public Instant RaisedAt { get; init; }

    /// <summary>When it cleared; never while active.</summary>
    public Instant ClearedAt { get; init; }

    /// <summary>Who acknowledged it.</summary>
    public string? AcknowledgedBy { get; init; }

    /// <summary>When.</summary>
    public Instant AcknowledgedAt { get; init; }

    /// <summary>The words given with it.</summary>
    public string? Comment { get; init; }

    /// <summary>Who shelved it.</summary>
    public string? ShelvedBy { get; init; }

    /// <summary>Why.</summary>
    public string? ShelvedWhy { get; init; }

    /// <summary>The shelf ends when the alarm clears, or at its time, whichever is first.</summary>
    public bool OneShot { get; init; }

    /// <summary>What design suppresses it by, in words; null while it does not.</summary>
    public Reason? SuppressedBy { get; init; }

    /// <summary>Who took it out of service.</summary>
    public string? OutOfServiceBy { get; init; }

    /// <summary>When.</summary>
    public Instant OutOfServiceAt { get; init; }

    /// <summary>Why.</summary>
    public string? OutOfServiceWhy { get; init; }

    /// <summary>It returns to service by itself then; never means that a person returns it.</summary>
    public Instant OutOfServiceUntil { get; init; }

    /// <summary>Its place in the order of raising within the circuit: which came first. 0 before it was ever raised.</summary>
    public long Order { get; init; }

    /// <summary>Key of the alarm of which this one is a consequence; null when it stands for itself.</summary>
    public string? ConsequenceOf { get; init; }

    /// <summary>How often it annunciated anew because it still stood and nothing was done.</summary>
    public int ReAlarms { get; init; }

    /// <summary>When it last annunciated as new: raised, back from shelf, suppression or out of service, or again after standing long.</summary>
    public Instant AnnunciatedAt { get; init; }

    /// <summary>The state of IEC 62682 that follows from the facts.</summary>
    public AlarmState State => AlarmTable.StateOf(this);
}
