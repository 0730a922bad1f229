using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>A water as it was measured: what its balance, its disinfectant and its answer to a dose are worked out from.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Temperature">Water temperature.</param>
/// <param name="Alkalinity">Total alkalinity by titration to pH 4.5, cyanurate and borate included.</param>
/// <param name="Calcium">Calcium hardness.</param>
/// <param name="Solids">Total dissolved solids.</param>
public sealed record Water(Ph Ph, Celsius Temperature, Alkalinity Alkalinity, CalciumHardness Calcium, DissolvedSolids Solids)
{
    /// <summary>Cyanuric acid; null when there is none or it was never tested.</summary>
    public CyanuricAcid? Cyanurate { get; init; }

    /// <summary>Free chlorine; null when there is none or it was never tested.</summary>
    public FreeChlorine? FreeChlorine { get; init; }

    /// <summary>Boric acid and borate in mg/L as B; 0 when there is none.</summary>
    public double BoronMilligramsPerLitre { get; init; }
}
