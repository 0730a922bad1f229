namespace PlantWatch.Core.Chemistry;

/// <summary>The building blocks from which every species of the water is written. Chloride is beside them: it binds nothing here.</summary>
internal enum Component
{
    /// <summary>H+. Its total is what electroneutrality asks for.</summary>
    Hydrogen = 0,
    /// <summary>CO3--.</summary>
    Carbonate,
    /// <summary>Ca++.</summary>
    Calcium,
    /// <summary>Na+.</summary>
    Sodium,
    /// <summary>SO4--.</summary>
    Sulfate,
    /// <summary>Cy---, cyanuric acid without its three protons.</summary>
    Cyanurate,
    /// <summary>HOCl.</summary>
    HypochlorousAcid,
    /// <summary>B(OH)3.</summary>
    BoricAcid,
}
