namespace PlantWatch.Server.Api;

// ---- GET /api/v1/probes/{id} : ProbeHistory

/// <summary>A probe with its past.</summary>
/// <param name="Offer">What PlantWatch would propose; null when nothing.</param>
/// <param name="Advice">Why there is an offer, or why there is none.</param>
public sealed record ProbeHistory(
    ProbeInfo Info, ProbeView Now, IReadOnlyList<JudgementView> Judgements, IReadOnlyList<CalibrationView> Calibrations, OfferedCalibration? Offer,
    IReadOnlyList<Said> Advice);
