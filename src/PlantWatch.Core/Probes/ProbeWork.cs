namespace PlantWatch.Core.Probes;

/// <summary>What was done to a probe while it was out of its cell. The default is nothing at all.</summary>
[Flags]
public enum ProbeWork
{
    /// <summary>Nothing was touched.</summary>
    None = 0,
    /// <summary>Rinsed, wiped or soaked: deposits are gone, the electrode is the same.</summary>
    Cleaned = 1,
    /// <summary>Another electrode: nothing learned of the old one holds.</summary>
    ElectrodeReplaced = 2,
    /// <summary>The metal of an ORP electrode was polished: its level may have moved.</summary>
    Polished = 4,
    /// <summary>A new membrane of an amperometric cell: its slope has moved.</summary>
    MembraneReplaced = 8,
    /// <summary>Fresh electrolyte: slope and zero have moved.</summary>
    ElectrolyteRefilled = 16,
}

/// <summary>What a calibration was measured against.</summary>
public enum CalibrationBasis
{
    /// <summary>Not stated: numbers that a person typed.</summary>
    Unknown = 0,
    /// <summary>Tests by hand of the pool's own water.</summary>
    Checks,
    /// <summary>Buffers of known pH.</summary>
    Buffers,
    /// <summary>A solution of known redox potential.</summary>
    CheckSolution,
}
