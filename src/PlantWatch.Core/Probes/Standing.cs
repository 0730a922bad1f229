namespace PlantWatch.Core.Probes;

/// <summary>The standing of a probe in the categories of NAMUR NE 107. The default is <see cref="Unknown"/>, never good.</summary>
public enum Standing
{
    /// <summary>No evidence yet.</summary>
    Unknown = 0,
    /// <summary>Nothing speaks against it.</summary>
    Good,
    /// <summary>Still valid, but due for attention soon (M).</summary>
    MaintenanceRequired,
    /// <summary>Uncertain: outside what it should do (S).</summary>
    OutOfSpecification,
    /// <summary>Output temporarily invalid: no sample flow, backwash, work on the probe (C).</summary>
    CheckFunction,
    /// <summary>Output invalid (F).</summary>
    Failure,
}
