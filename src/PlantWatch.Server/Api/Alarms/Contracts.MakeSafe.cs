namespace PlantWatch.Server.Api;

// ---- POST /api/v1/alarms/{id}/made-safe  MakeSafe  -> AlarmView; holds for every alarm of the circuit that asks for it

/// <summary>What was done to make the plant safe: of dosing into standing water the first three, of a wrong product in a tank the last two and its pump.</summary>
/// <param name="BathersOut">Bathers are out of the water.</param>
/// <param name="PumpsIsolated">Both dosing pumps are isolated.</param>
/// <param name="CirculationHeld">The circulation is not started before that.</param>
/// <param name="By">Who.</param>
/// <param name="Comment">Words to it.</param>
/// <param name="RoomLeft">Everybody left the room, and nobody went back in before the air was known to be clear.</param>
/// <param name="TankDealtWith">Whoever is competent dealt with the content of the tank.</param>
public sealed record MakeSafe(bool BathersOut, bool PumpsIsolated, bool CirculationHeld, string? By, string? Comment, bool RoomLeft = false, bool TankDealtWith = false);

/// <summary>What was recorded of it.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Comment">Words to it.</param>
public sealed record MadeSafeView(string By, PlantWatch.Core.Quantities.Instant At, string? Comment);
