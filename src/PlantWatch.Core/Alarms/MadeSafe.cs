using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms;

/// <summary>What a person recorded of having made the plant safe after dosing into standing water: bathers out, both dosing pumps isolated, circulation held until that was done.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When it was recorded.</param>
/// <param name="Comment">Words to it; null for none.</param>
public sealed record MadeSafe(string By, Instant At, string? Comment);
