using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing;

/// <summary>State of a fault note.</summary>
public enum FaultState
{
    /// <summary>Seen, nobody on it.</summary>
    Open = 0,
    /// <summary>Somebody is on it.</summary>
    InHand,
    /// <summary>Done.</summary>
    Done,
}

/// <summary>A note by maintenance on a pump or probe: what was seen, what was done. Each change is a new row with the same id.</summary>
/// <param name="Id">UUIDv7 made where it was first written.</param>
/// <param name="Asset">Pump or probe id.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="Done">What was done; null while nothing was.</param>
/// <param name="State">Open, in hand or done.</param>
/// <param name="AlarmId">The alarm it answers; null when there was none.</param>
/// <param name="By">Who wrote this version.</param>
/// <param name="At">When this version was written.</param>
public sealed record FaultNote(Guid Id, string Asset, string Seen, string? Done, FaultState State, Guid? AlarmId, string By, Instant At);
