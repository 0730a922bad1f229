using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/pools/{id}/balance : BalanceView; the same travels with every view of the pool on the live hub

/// <summary>Balance: an index, or what keeps it from being one.</summary>
/// <param name="Index">Handbook saturation index; null when it cannot be had.</param>
/// <param name="Claim">What the method may claim, +-.</param>
/// <param name="Word">corrosive, balanced, scale_forming; null without index.</param>
/// <param name="Inputs">Each input with its age and where it comes from.</param>
/// <param name="Missing">What is missing or out of range.</param>
public sealed record BalanceView(double? Index, double Claim, string? Word, IReadOnlyList<BalanceInput> Inputs, IReadOnlyList<Said> Missing);

/// <summary>An input of the balance.</summary>
/// <param name="Measurand">What.</param>
/// <param name="Value">The figure that is reckoned with; of a probe that the tests call wrong, what the tests support.</param>
/// <param name="At">When it was measured.</param>
/// <param name="Live">True from a probe, false from a test.</param>
/// <param name="U">Expanded uncertainty, k = 2; null when nobody knows.</param>
/// <param name="Suspect">The test is doubted, or signal or tests speak against the probe.</param>
/// <param name="ProbeId">The probe; null for a test.</param>
public sealed record BalanceInput(Measurand Measurand, double Value, Instant At, bool Live, double? U, bool Suspect, string? ProbeId);
