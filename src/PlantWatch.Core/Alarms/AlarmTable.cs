namespace PlantWatch.Core.Alarms;

/// <summary>The state table of IEC 62682 / ISA-18.2: which state follows from which facts.</summary>
/// <remarks>Shape after OPC UA part 9 (OPC 10000-9 v1.05.03, clause 4.8): independent two-state variables, so that "acknowledged while shelved" cannot be lost.</remarks>
public static class AlarmTable
{
    /// <summary>The state. Out of service hides suppression, which hides the shelf, which hides the rest.</summary>
    public static AlarmState StateOf(AlarmRecord alarm) => alarm switch
    {
        { OutOfService: true } => AlarmState.OutOfService,
        { Suppressed: true } => AlarmState.SuppressedByDesign,
        { ShelvedUntil.IsSet: true } => AlarmState.Shelved,
        { Active: true, IsAcknowledged: false } => AlarmState.Unacknowledged,
        { Active: true } => AlarmState.Acknowledged,
        { LatchHeld: true, IsAcknowledged: false } => AlarmState.LatchedUnacknowledged,
        { LatchHeld: true } => AlarmState.LatchedAcknowledged,
        { IsAcknowledged: false } => AlarmState.ReturnedUnacknowledged,
        _ => AlarmState.Normal,
    };
}
