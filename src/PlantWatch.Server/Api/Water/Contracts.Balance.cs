using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/pools/{id}/balance : BalanceView; the same travels with every view of the pool on the live hub

/// <summary>Balance: the indices, or what keeps them from being had.</summary>
/// <param name="Index">The saturation index to go by; null when none can be had.</param>
/// <param name="Claim">How far it may be off, +-: method and inputs together.</param>
/// <param name="Word">corrosive, balanced, scale_forming; null without index.</param>
/// <param name="Inputs">Each input with its age and where it comes from.</param>
/// <param name="Missing">What is missing or out of range.</param>
/// <param name="Indices">Every index, those that are acted on first.</param>
/// <param name="Chlorine">How much of the free chlorine disinfects; null where that does not apply.</param>
/// <param name="Remarks">What has to be said of the water and of its inputs.</param>
public sealed record BalanceView(
    double? Index, double Claim, string? Word, IReadOnlyList<BalanceInput> Inputs, IReadOnlyList<Said> Missing, IReadOnlyList<IndexView> Indices,
    ChlorineView? Chlorine, IReadOnlyList<Said> Remarks);

/// <summary>An input of the balance.</summary>
/// <param name="Measurand">What.</param>
/// <param name="Value">The figure that is reckoned with; of a probe that the tests call wrong, what the tests support.</param>
/// <param name="At">When it was measured.</param>
/// <param name="Live">True from a probe, false from a test.</param>
/// <param name="U">Expanded uncertainty, k = 2; null when nobody knows.</param>
/// <param name="Suspect">The test is doubted, or signal or tests speak against the probe.</param>
/// <param name="ProbeId">The probe; null for a test.</param>
public sealed record BalanceInput(Measurand Measurand, double Value, Instant At, bool Live, double? U, bool Suspect, string? ProbeId);

/// <summary>One index.</summary>
/// <param name="Key">speciated, handbook, closed_form, precipitation, saturation_ph, ryznar, puckorius, larson_skold.</param>
/// <param name="Value">The index; null when it cannot be had.</param>
/// <param name="Claim">What the method may claim, +-; null when nobody says.</param>
/// <param name="U">What the uncertainty of the inputs makes of it, expanded, k = 2; null when it is not known.</param>
/// <param name="Word">corrosive, balanced, scale_forming; null where the index has no such word.</param>
/// <param name="Acted">PlantWatch goes by it.</param>
/// <param name="Sayings">Why there is none, or what has to be said beside it.</param>
public sealed record IndexView(string Key, double? Value, double? Claim, double? U, string? Word, bool Acted, IReadOnlyList<Said> Sayings);

/// <summary>Hypochlorous acid, the part of chlorine that disinfects.</summary>
/// <param name="Free">Free chlorine that is reckoned with, mg/L as Cl2; null when not known.</param>
/// <param name="Share">Share of free chlorine, 0 to 1; null when not known.</param>
/// <param name="Hocl">mg/L as Cl2; null when not known.</param>
/// <param name="U">Its expanded uncertainty by the tests, k = 2; null when not known.</param>
/// <param name="ShareWithout">The share as it would be without cyanurate.</param>
/// <param name="HoclWithout">The amount as it would be without cyanurate.</param>
/// <param name="Cyanurate">Cyanuric acid, mg/L; null when it was never tested.</param>
/// <param name="Sayings">What has to be said beside it.</param>
public sealed record ChlorineView(
    double? Free, double? Share, double? Hocl, double? U, double? ShareWithout, double? HoclWithout, double? Cyanurate, IReadOnlyList<Said> Sayings);
