using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET  /api/v1/bench/{probeId}?since=       BenchView: what a guided calibration needs, and whether the readings since then have settled
//      POST /api/v1/bench/{probeId}/result       SheetRequest -> SheetResult: what would follow; nothing is kept
//      PUT  /api/v1/bench/{probeId}/sheets/{id}  SheetRequest -> CalibrationView: signed, also when sent again
//      PUT  /api/v1/bench/{probeId}/out/{id}    WorkRequest -> WorkView: readings are a function check from now on, half an hour at most
//      POST /api/v1/bench/{probeId}/out/{id}/back  WorkRequest -> WorkView
//      POST /api/v1/calibrations/{id}/review     ReviewRequest -> CalibrationView
//      GET  /api/v1/calibrations/{id}            CalibrationView

/// <summary>A probe at the bench.</summary>
/// <param name="Probe">The probe.</param>
/// <param name="Limits">What its electrode may do, and how often it is calibrated.</param>
/// <param name="DueAt">When the next calibration is due; null for what is not calibrated.</param>
/// <param name="Overdue">True when that is past.</param>
/// <param name="Work">Work under way; null when nobody works on it.</param>
/// <param name="HeldSlope">Slope of the correction in force.</param>
/// <param name="HeldOffset">Offset of it.</param>
/// <param name="Settled">Whether its readings since the time asked for have settled; null when it was not asked, or the probe is not put into solutions.</param>
/// <param name="LastAt">Its newest reading.</param>
/// <param name="Buffers">The buffers that are known here; empty for another probe than pH.</param>
/// <param name="CheckSolutions">The check solutions that are known here; empty for another probe than ORP.</param>
/// <param name="Spans">How far it moved from one calibration at the bench to the next, oldest first.</param>
/// <param name="DriftPerDay">Mean of them with its U, unit a day; null without any.</param>
/// <param name="BySlope">When its slope will have left the limits; null when that cannot be said.</param>
public sealed record BenchView(
    ProbeInfo Probe, CareView Limits, Instant? DueAt, bool Overdue, WorkView? Work, double HeldSlope, double HeldOffset, Settled? Settled, Instant? LastAt,
    IReadOnlyList<BufferView> Buffers, IReadOnlyList<CheckSolutionView> CheckSolutions, IReadOnlyList<DriftSpan> Spans, WithU? DriftPerDay, OutlookView? BySlope);

/// <summary>Limits and interval of a probe, from the plant file.</summary>
public sealed record CareView(double EveryDays, double SlopeLow, double SlopeHigh, double OffsetMillivolts, double OrpMillivolts, bool SecondPerson);

/// <summary>A buffer with its pH at some temperatures, degC.</summary>
public sealed record BufferView(PhBuffer Buffer, BufferFamily Family, double Nominal, IReadOnlyList<PointOfTable> Table);

/// <summary>A check solution with its mV at some temperatures, degC.</summary>
public sealed record CheckSolutionView(QuinhydroneBuffer Quinhydrone, IReadOnlyList<PointOfTable> Table);

/// <summary>One row of a table.</summary>
public sealed record PointOfTable(double Celsius, double Value);

/// <summary>A time of work on a probe.</summary>
public sealed record WorkView(Guid Id, string By, Instant Since, Instant Until, bool Open);

/// <summary>Who begins or ends work.</summary>
public sealed record WorkRequest(string? By);

/// <summary>A forecast of the next service.</summary>
public sealed record OutlookView(Said Why, Instant? Earliest, Instant? Likely, Instant? Latest);

/// <summary>A second person's word. An objection needs its why.</summary>
public sealed record ReviewRequest(bool Accepted, string? By, string? Why);

/// <summary>A sheet as the page sends it. The id is in the address.</summary>
public sealed record SheetRequest
{
    /// <summary>Who did it.</summary>
    public string? By { get; init; }
    /// <summary>A remark.</summary>
    public string? Note { get; init; }
    /// <summary>What was done to the probe.</summary>
    public IReadOnlyList<ProbeWork>? Work { get; init; }
    /// <summary>When it left its cell.</summary>
    public Instant StartedAt { get; init; }
    /// <summary>When it was back; null means when it is signed.</summary>
    public Instant EndedAt { get; init; }
    /// <summary>As found, before anything was touched.</summary>
    public IReadOnlyList<PointRequest>? AsFound { get; init; }
    /// <summary>What it is calibrated by.</summary>
    public IReadOnlyList<PointRequest>? Points { get; init; }
    /// <summary>As left, when measured again.</summary>
    public IReadOnlyList<PointRequest>? AsLeft { get; init; }
}

/// <summary>A reading in a solution as the page sends it.</summary>
public sealed record PointRequest
{
    /// <summary>pH buffer.</summary>
    public PhBuffer Buffer { get; init; }
    /// <summary>Buffer of a quinhydrone check solution.</summary>
    public QuinhydroneBuffer Quinhydrone { get; init; }
    /// <summary>Value on the label of another solution, at its temperature.</summary>
    public double? Label { get; init; }
    /// <summary>Temperature of the solution, degC.</summary>
    public double? Celsius { get; init; }
    /// <summary>What the probe read, uncorrected.</summary>
    public double? Reading { get; init; }
    /// <summary>True for the mV of a pH electrode.</summary>
    public bool InMillivolts { get; init; }
    /// <summary>Typed, or settled by itself.</summary>
    public PointSource Source { get; init; }
    /// <summary>When.</summary>
    public Instant At { get; init; }
    /// <summary>Lot.</summary>
    public string? Lot { get; init; }
    /// <summary>Day of expiry.</summary>
    public DateOnly? Expires { get; init; }
}

/// <summary>What would follow from a sheet.</summary>
public sealed record SheetResult(CalibrationKind Kind, CalibrationStatus Status, double Slope, double Offset, SheetView Sheet);

/// <summary>A sheet as it was signed.</summary>
public sealed record SheetView(
    Instant? StartedAt, Instant? EndedAt, IReadOnlyList<PointView> AsFound, IReadOnlyList<PointView> Points, IReadOnlyList<PointView> AsLeft, CareView Limits, double HeldSlope, double HeldOffset,
    double? SlopePercent, double? OffsetMillivolts, double? FoundError, double? LeftError, BenchVerdict Verdict, IReadOnlyList<Said> Why);

/// <summary>A reading in a solution, and what an ideal probe reads there.</summary>
public sealed record PointView(
    PhBuffer Buffer, QuinhydroneBuffer Quinhydrone, double? Label, double? Known, double Celsius, double Reading, bool InMillivolts, PointSource Source, Instant? At, string? Lot, DateOnly? Expires);
