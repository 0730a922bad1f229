namespace PlantWatch.Core.Chemistry;

/// <summary>A pH buffer, known by the pH printed on its bottle for 25 degC.</summary>
public enum PhBuffer
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Potassium hydrogen phthalate 0.05 mol/kg: 4.01.</summary>
    Phthalate,
    /// <summary>Equimolal phosphate: 6.86. Not the one of 7.00.</summary>
    Phosphate,
    /// <summary>Borax 0.01 mol/kg: 9.18.</summary>
    Borax,
    /// <summary>Carbonate: 10.02 (10.01 on many bottles).</summary>
    Carbonate,
    /// <summary>Technical buffer 4.00.</summary>
    Technical4,
    /// <summary>Technical buffer 7.00. Not the one of 6.86.</summary>
    Technical7,
    /// <summary>Technical buffer 10.01.</summary>
    Technical10,
}

/// <summary>Buffers that are sold and tabulated together.</summary>
public enum BufferFamily
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Reference solutions: 4.01, 6.86, 9.18, 10.02.</summary>
    Reference,
    /// <summary>Technical buffers: 4.00, 7.00, 10.01.</summary>
    Technical,
}
