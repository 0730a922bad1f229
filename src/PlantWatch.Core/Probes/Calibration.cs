using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>How a calibration corrects.</summary>
public enum CalibrationKind
{
    /// <summary>Shifts by an offset; slope stays 1.</summary>
    Offset = 0,
    /// <summary>Slope and offset from two points.</summary>
    TwoPoint,
    /// <summary>An adjustment of the plant's own panel: logged here, applied there, so that nothing is corrected twice.</summary>
    PanelAdjustment,
    /// <summary>Looked at in buffers or a check solution and left as it was: corrects nothing, and what was in force stays.</summary>
    Verification,
}

/// <summary>Where a proposed calibration stands.</summary>
public enum CalibrationStatus
{
    /// <summary>Waiting for an engineer.</summary>
    Proposed = 0,
    /// <summary>In force from its time on.</summary>
    Approved,
    /// <summary>Turned down.</summary>
    Rejected,
    /// <summary>A panel adjustment that was carried out on the panel.</summary>
    Adjusted,
}

/// <summary>A calibration from proposal to force: corrected = slope x raw + offset, from a time on. Raw readings are never rewritten.</summary>
public sealed record Calibration
{
    /// <summary>UUIDv7 made by the proposer.</summary>
    public required Guid Id { get; init; }

    /// <summary>The probe.</summary>
    public required string ProbeId { get; init; }

    /// <summary>What it does.</summary>
    public CalibrationKind Kind { get; init; }

    /// <summary>Where it stands.</summary>
    public CalibrationStatus Status { get; init; }

    /// <summary>Slope, dimensionless. For a panel adjustment always 1.</summary>
    public double Slope { get; init; } = 1;

    /// <summary>Offset in the measurand's unit. For a panel adjustment the amount to add to the panel's value.</summary>
    public double Offset { get; init; }

    /// <summary>The checks it rests on.</summary>
    public ImmutableArray<Guid> Checks { get; init; } = [];

    /// <summary>What it was measured against.</summary>
    public CalibrationBasis Basis { get; init; }

    /// <summary>What was done to the probe itself. A fact from <see cref="HoldsFrom"/> on, whatever a reviewer says of the numbers.</summary>
    public ProbeWork Work { get; init; }

    /// <summary>True when the electrode stood in buffers of known pH: its offset, or slope and offset, are known without any test of the water.</summary>
    [JsonIgnore]
    public bool ByBuffers => Basis == CalibrationBasis.Buffers;

    /// <summary>True when the electrode stood in a solution of known potential. That tells an offset and no slope.</summary>
    [JsonIgnore]
    public bool ByCheckSolution => Basis == CalibrationBasis.CheckSolution;

    /// <summary>Who proposed it.</summary>
    public required string ProposedBy { get; init; }

    /// <summary>When.</summary>
    public Instant ProposedAt { get; init; }

    /// <summary>The proposer's remark.</summary>
    public string? Note { get; init; }

    /// <summary>Who approved, rejected or carried it out; null while proposed.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>When.</summary>
    public Instant DecidedAt { get; init; }

    /// <summary>Why, in the decider's words.</summary>
    public string? Decision { get; init; }

    /// <summary>The time from which it holds, the panel was turned or the probe stood in its cell again; never for a proposal without a sheet that is not approved.</summary>
    public Instant HoldsFrom { get; init; }

    /// <summary>The sheet of a calibration at the bench; null for one from checks or typed numbers.</summary>
    public BenchSheet? Sheet { get; init; }

    /// <summary>Who looked it over after it was signed; null while nobody has. Never who did it, where the plant asks for a second person.</summary>
    public string? ReviewedBy { get; init; }

    /// <summary>When.</summary>
    public Instant ReviewedAt { get; init; }

    /// <summary>True when the reviewer objected: the correction is taken back, the work on the probe and what was turned on a panel remain as facts.</summary>
    public bool Objected { get; init; }

    /// <summary>What the reviewer says.</summary>
    public string? Review { get; init; }

    /// <summary>True for a calibration at the bench that was signed and not looked over by anybody yet.</summary>
    [JsonIgnore]
    public bool WaitsForReview => Sheet is not null && ReviewedBy is null && Status is CalibrationStatus.Approved or CalibrationStatus.Adjusted;

    /// <summary>Applies slope and offset to a raw value. One pure method: the whole calibrator.</summary>
    public double Apply(double raw) => (Slope * raw) + Offset;
}
