using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant;

/// <summary>One row of the record: append-only, never changed. A correction is a new row that names the old one.</summary>
/// <param name="Id">UUIDv7 of this row.</param>
/// <param name="At">When it entered the record.</param>
/// <param name="HappenedAt">The time it speaks of: sample time of a check, HoldsFrom of a calibration; else the same as <paramref name="At"/>.</param>
/// <param name="Subject">Pool, probe, pump or alarm id it is about.</param>
/// <param name="Body">What it says.</param>
public sealed record RecordEntry(Guid Id, Instant At, Instant HappenedAt, string Subject, EntryBody Body);

/// <summary>What an entry says; a closed list.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(CheckEntry), "check")]
[JsonDerivedType(typeof(JudgementEntry), "judgement")]
[JsonDerivedType(typeof(CalibrationEntry), "calibration")]
[JsonDerivedType(typeof(AlarmEntry), "alarm")]
[JsonDerivedType(typeof(JobEntry), "fault")]
[JsonDerivedType(typeof(JobEffectEntry), "job_effect")]
[JsonDerivedType(typeof(StandingEntry), "standing")]
[JsonDerivedType(typeof(GapEntry), "gap")]
[JsonDerivedType(typeof(PlanEntry), "plan")]
[JsonDerivedType(typeof(IncidentEntry), "incident")]
[JsonDerivedType(typeof(DoseEntry), "dose")]
[JsonDerivedType(typeof(DoseResponseEntry), "dose_response")]
[JsonDerivedType(typeof(WorkEntry), "work")]
[JsonDerivedType(typeof(CorrectionEntry), "correction")]
[JsonDerivedType(typeof(PackRowEntry), "pack_row")]
[JsonDerivedType(typeof(LabResultEntry), "laboratory")]
[JsonDerivedType(typeof(LabClosedEntry), "laboratory_closed")]
[JsonDerivedType(typeof(FilterEntry), "filter_washed")]
[JsonDerivedType(typeof(HandoverEntry), "handover")]
[JsonDerivedType(typeof(BackwashEntry), "backwash")]
[JsonDerivedType(typeof(ReagentEntry), "reagent_opened")]
[JsonDerivedType(typeof(InstrumentEntry), "instrument_verified")]
[JsonDerivedType(typeof(RoundEntry), "plant_round")]
[JsonDerivedType(typeof(StockEntry), "stock")]
[JsonDerivedType(typeof(UseEntry), "chemical_use")]
[JsonDerivedType(typeof(BathersEntry), "bathers")]
[JsonDerivedType(typeof(NoteEntry), "note")]
[JsonDerivedType(typeof(PoolStateEntry), "pool_state")]
[JsonDerivedType(typeof(ExceptionEntry), "exception")]
[JsonDerivedType(typeof(ExceptionClosedEntry), "exception_closed")]
public abstract record EntryBody
{
    /// <summary>Stable key of the kind, as stored.</summary>
    [JsonIgnore]
    public abstract string Kind { get; }
}

/// <summary>A manual check with what was unlikely about it.</summary>
public sealed record CheckEntry(ManualCheck Check, Instant ArrivedAt, ImmutableArray<FieldRemark> Remarks) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "check";
}

/// <summary>What a check says of a probe.</summary>
public sealed record JudgementEntry(Judgement Judgement) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "judgement";
}

/// <summary>A calibration in a new status.</summary>
public sealed record CalibrationEntry(Calibration Calibration) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "calibration";
}

/// <summary>An alarm changed state.</summary>
/// <param name="Alarm">The alarm after the change.</param>
/// <param name="Change">What changed it: raised, cleared, acknowledged, shelved, unshelved, ...</param>
/// <param name="By">The person; null when the plant did it.</param>
/// <param name="Comment">The person's words.</param>
public sealed record AlarmEntry(AlarmRecord Alarm, AlarmChange Change, string? By, string? Comment) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "alarm";
}

/// <summary>A change of standing of a probe from its signal.</summary>
public sealed record StandingEntry(string ProbeId, Standing Standing, ImmutableArray<Reason> Reasons) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "standing";
}

/// <summary>A gap: something was lost or may have been.</summary>
public sealed record GapEntry(Instant From, Instant To, Reason Reason) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "gap";
}

/// <summary>What happened to an incident.</summary>
public enum IncidentChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A person declared it.</summary>
    Declared,
    /// <summary>A person noted something.</summary>
    Noted,
    /// <summary>A person closed it.</summary>
    Closed,
    /// <summary>Its pool left the circuit with a new plant file: nothing watches it here any more.</summary>
    PoolGone,
    /// <summary>Its pool left the circuit with a new plant file; it stays open for the pools that shared the water.</summary>
    PoolLeft,
    /// <summary>It came into the circuit with a pool that shared the water it happened in.</summary>
    CameWithPool,
}

/// <summary>How the clock of an incident stood in another pool of the same water.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Hold">How it stood.</param>
/// <param name="Share">The part of the hold that the tests there supported, 0 to 1.</param>
public readonly record struct PoolHold(string PoolId, HoldWord Hold, double Share);

/// <summary>An incident after a change, with its tests and how its clock stood.</summary>
/// <param name="Incident">The incident.</param>
/// <param name="Change">What happened.</param>
/// <param name="By">The person; null when the plant file did it.</param>
/// <param name="Comment">The person's words.</param>
/// <param name="Hold">How the clock stood.</param>
/// <param name="Share">The part of the hold that the tests supported, 0 to 1.</param>
public sealed record IncidentEntry(Incident Incident, IncidentChange Change, string? By, string? Comment, HoldWord Hold, double Share) : EntryBody
{
    /// <summary>How it stood in the other pools of the water.</summary>
    public ImmutableArray<PoolHold> Others { get; init; } = [];

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "incident";
}

/// <summary>The plant file came into force, with the stated effects of each change.</summary>
public sealed record PlanEntry(ImmutableArray<Reason> Effects) : EntryBody
{
    /// <summary>Who saved the plant file, where it was saved on the page; null when it was edited elsewhere.</summary>
    public string? By { get; init; }

    /// <summary>Why, in words; null when nothing was said.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "plan";
}

/// <summary>A dose that a person gave.</summary>
public sealed record DoseEntry(GivenDose Dose, Instant ArrivedAt) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "dose";
}

/// <summary>What a retest says of a dose.</summary>
public sealed record DoseResponseEntry(DoseResponse Response) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "dose_response";
}

/// <summary>A person began or ended work on a probe.</summary>
/// <param name="ProbeId">The probe.</param>
/// <param name="Window">The time of it.</param>
/// <param name="Change">What happened.</param>
/// <param name="By">The person; null when it ended by itself.</param>
public sealed record WorkEntry(string ProbeId, WorkWindow Window, WorkChange Change, string? By) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "work";
}

/// <summary>A correction of the record, made or withdrawn: who, when and why stand in it.</summary>
public sealed record CorrectionEntry(RecordCorrection Correction) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "correction";
}

/// <summary>What happened to a row of a pack.</summary>
public enum RowChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A person confirmed it.</summary>
    Confirmed,
    /// <summary>A person took the confirmation back.</summary>
    Revoked,
}

/// <summary>A row of the limit pack was confirmed, or its confirmation taken back.</summary>
public sealed record PackRowEntry(RowConfirmation Confirmation, RowChange Change, string By, string? Why) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "pack_row";
}
