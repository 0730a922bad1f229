namespace PlantWatch.Core.Chemistry;

/// <summary>What people read off a water. Null where it is not known. The default is no water.</summary>
/// <param name="Ph">pH.</param>
/// <param name="TotalAlkalinity">mg/L as CaCO3.</param>
/// <param name="CalciumHardness">mg/L as CaCO3.</param>
/// <param name="DissolvedSolids">mg/L.</param>
/// <param name="Cyanurate">Cyanuric acid, mg/L.</param>
/// <param name="FreeChlorine">mg/L as Cl2, as DPD reads it.</param>
/// <param name="SaturationIndex">Of calcite, by the speciated model.</param>
/// <param name="HypochlorousAcid">mg/L as Cl2: the part that disinfects.</param>
/// <param name="HypochlorousShare">The same as a part of free chlorine, 0 to 1.</param>
public readonly record struct WaterFigures(
    double Ph, double TotalAlkalinity, double? CalciumHardness, double? DissolvedSolids, double Cyanurate, double? FreeChlorine, double? SaturationIndex,
    double? HypochlorousAcid, double? HypochlorousShare);
