namespace PlantWatch.Server.Api;

// ---- POST /api/v1/alarms/{id}/made-safe  MakeSafe  -> AlarmView; holds for every alarm of the circuit that asks for it

/// <summary>What was done to make the plant safe after dosing into standing water.</summary>
/// <param name="BathersOut">Bathers are out of the water.</param>
/// <param name="PumpsIsolated">Both dosing pumps are isolated.</param>
/// <param name="CirculationHeld">The circulation is not started before that.</param>
/// <param name="By">Who.</param>
/// <param name="Comment">Words to it.</param>
public sealed record MakeSafe(bool BathersOut, bool PumpsIsolated, bool CirculationHeld, string? By, string? Comment);

/// <summary>What was recorded of it.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Comment">Words to it.</param>
public sealed record MadeSafeView(string By, PlantWatch.Core.Quantities.Instant At, string? Comment);
