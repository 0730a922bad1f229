using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/probes/{id}/corrections : CorrectionsView

/// <summary>What was corrected in the record of a probe, and what two of its services speak for.</summary>
/// <param name="Corrections">Newest stretch first, those withdrawn among them.</param>
/// <param name="Offers">Stretches between services that nobody has corrected, newest first.</param>
public sealed record CorrectionsView(IReadOnlyList<CorrectionView> Corrections, IReadOnlyList<CorrectionOfferView> Offers);

/// <summary>A correction of the record: nothing is added at <paramref name="From"/>, the whole gap just before <paramref name="To"/>.</summary>
/// <param name="U">Expanded uncertainty of the gap, k = 2.</param>
/// <param name="Gap">The whole gap at the pivot: fouling and drift together.</param>
public sealed record CorrectionView(
    Guid Id, string ProbeId, Instant From, Instant To, double Gap, double U, double Fouling, double Drift, double DriftSlope, double Pivot, Guid? FromService, Guid? ToService,
    string MadeBy, Instant MadeAt, string Why, string? WithdrawnBy, Instant? WithdrawnAt, string? WithdrawnWhy);

/// <summary>What the second of two services speaks for. Without a gap it found none, and Why says so. Gap is what calibration found; what deposits made is beside it.</summary>
public sealed record CorrectionOfferView(
    Instant From, Instant To, Guid FromService, Guid ToService, WithU? Gap, double Fouling, double Slope, double Pivot, IReadOnlyList<Said> Why);

// ---- PUT /api/v1/corrections/{id}  MakeCorrection -> CorrectionView    POST /api/v1/corrections/{id}/withdrawal  WithdrawCorrection -> CorrectionView

/// <summary>A person corrects the record. With the services named, what is left out is taken from what they speak for.</summary>
/// <param name="Fouling">Value after cleaning less before; 0 when left out.</param>
/// <param name="Drift">What calibration found, at the pivot.</param>
/// <param name="U">Expanded uncertainty of the gap, k = 2.</param>
public sealed record MakeCorrection(
    string? ProbeId, Guid? FromService, Guid? ToService, Instant From, Instant To, double? Fouling, double? Drift, double? DriftSlope, double? Pivot, double? U, string? By, string? Why);

/// <summary>A person withdraws a correction and says why.</summary>
public sealed record WithdrawCorrection(string? By, string? Why);

// ---- GET /api/v1/probes/{id}/record?from=&to=&show=raw|corrected|both&tier=quarter_hour|day : ProbeRecordView

/// <summary>The record of a probe in columns. A gap is a null in every column but the time.</summary>
/// <param name="Raw">Mean as read; null when not asked for.</param>
/// <param name="Corrected">Mean under the calibration in force and the corrections of the record; null when not asked for.</param>
/// <param name="U">Expanded uncertainty that a correction of the record brings in, k = 2; 0 where none holds.</param>
/// <param name="Good">Share of good readings, 0 to 1.</param>
/// <param name="Corrections">Those in force that touch the range.</param>
public sealed record ProbeRecordView(
    string ProbeId, string Unit, Tier Tier, IReadOnlyList<Instant> At, IReadOnlyList<double?>? Raw, IReadOnlyList<double?>? Corrected, IReadOnlyList<double?>? U,
    IReadOnlyList<double?> Good, IReadOnlyList<CorrectionView> Corrections);

// ---- GET /api/v1/probes/{id}/quality?from=&to= : DayQualityView[] oldest first

/// <summary>How good a day of the record is.</summary>
/// <param name="Day">The site's day, such as 2026-03-29.</param>
/// <param name="Completeness">Good readings of those expected, 0 to 1.</param>
/// <param name="Error">Combined error in the measurand's unit, uncertainty included; null when nothing told it.</param>
public sealed record DayQualityView(string Day, RecordRating Rating, double Completeness, double? Error, IReadOnlyList<Said> Why);
