using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms;

/// <summary>What a person recorded of having made the plant safe after dosing into standing water, or after a product went into the tank of another.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When it was recorded.</param>
/// <param name="Comment">Words to it; null for none.</param>
public sealed record MadeSafe(string By, Instant At, string? Comment);

/// <summary>What a person says was done to make safe. Which of it is asked for depends on what happened.</summary>
/// <param name="BathersOut">Bathers are out of the water.</param>
/// <param name="PumpsIsolated">Both dosing pumps are isolated; of a tank its pump.</param>
/// <param name="CirculationHeld">The circulation is not started before the lines are made safe.</param>
/// <param name="RoomLeft">Everybody left the room, and nobody went back in before the air was known to be clear.</param>
/// <param name="TankDealtWith">Whoever is competent dealt with the content of the tank.</param>
public sealed record SafeActs(bool BathersOut, bool PumpsIsolated, bool CirculationHeld, bool RoomLeft = false, bool TankDealtWith = false);
