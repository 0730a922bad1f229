using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a dose changes by stoichiometry alone, in mg/L on the basis of each figure. It needs nothing of the water but its volume. The default changes nothing.</summary>
/// <param name="Alkalinity">Total alkalinity as CaCO3.</param>
/// <param name="Calcium">Calcium hardness as CaCO3.</param>
/// <param name="FreeChlorine">Free chlorine as Cl2.</param>
/// <param name="Cyanurate">Cyanuric acid.</param>
/// <param name="Solids">Dissolved solids.</param>
public readonly record struct DoseChanges(double Alkalinity, double Calcium, double FreeChlorine, double Cyanurate, double Solids)
{
    /// <summary>What so many kg in so many m3 change.</summary>
    /// <param name="perKilogram">Mol that a kg adds (see <see cref="ProductAtHand.PerKilogram"/>).</param>
    /// <param name="kilogramsPerCubicMetre">kg of product in each m3.</param>
    public static DoseChanges Of(Composition perKilogram, double kilogramsPerCubicMetre)
    {
        // mol a kg times kg a m3 is mmol a litre; mmol times g/mol is mg.
        var c = kilogramsPerCubicMetre * perKilogram;
        var alkalinity = WaterRecipe.Alkalinity(c);
        return new(
            alkalinity * Masses.AlkalinityEquivalent, c.Calcium * Masses.CalciumCarbonate, c.Chlorine * Masses.Chlorine, c.Cyanurate * Masses.CyanuricAcid,
            (c.Calcium * Masses.Calcium) + (c.Sodium * Masses.Sodium) + (c.Chloride * Masses.Chloride) + (c.Sulfate * Masses.Sulfate) + (alkalinity * Masses.Bicarbonate));
    }

    /// <summary>The change of one figure; null for pH, which no stoichiometry gives, and for whatever no dose changes.</summary>
    public double? For(Measurand measurand) => measurand switch
    {
        Measurand.TotalAlkalinity => Alkalinity,
        Measurand.CalciumHardness => Calcium,
        Measurand.FreeChlorine => FreeChlorine,
        Measurand.CyanuricAcid => Cyanurate,
        Measurand.DissolvedSolids => Solids,
        _ => null,
    };
}
