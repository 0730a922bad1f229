namespace PlantWatch.Core.Readings;

/// <summary>What a dosing pump says of itself. The default is <see cref="Unknown"/>.</summary>
public enum PumpActivity
{
    /// <summary>Nothing heard yet.</summary>
    Unknown = 0,
    /// <summary>Standing.</summary>
    Stopped,
    /// <summary>Dosing.</summary>
    Running,
    /// <summary>Reports a fault.</summary>
    Fault,
}
