namespace PlantWatch.Core.Chemistry;

/// <summary>What a water does with calcite, by the speciated model.</summary>
public static class Calcite
{
    /// <summary>log10 of the solubility product the model uses, at a temperature in degC: -8.45 at 25 degC (phreeqc.dat 3.8.9; other databases have -8.48).</summary>
    public static double SolubilityLogK(double celsius) => SpeciesTable.Calcite.At(celsius);

    /// <summary>
    /// Calcium carbonate precipitation potential in mg/L as CaCO3: what must precipitate (above 0) or dissolve (below 0) until the water is just saturated, closed to carbon dioxide.
    /// </summary>
    /// <remarks>Sign trap: 35 Ill. Adm. Code 604.900 prints final less initial alkalinity, the opposite sign.</remarks>
    /// <returns>Null when the balances find no answer.</returns>
    public static double? PrecipitationPotential(Speciation water) =>
        Saturated(water, FreeAmount.Calcite) is { } saturated ? Masses.Milligrams(water.Composition.Calcium - saturated.Composition.Calcium, Masses.CalciumCarbonate) : null;

    /// <summary>The pH at which the same water would be just saturated: alkalinity and calcium kept, carbon dioxide moved.</summary>
    /// <returns>Null when there is no such pH from 4 to 11: without calcium or alkalinity, or with very little.</returns>
    public static double? SaturationPh(Speciation water) =>
        Saturated(water, FreeAmount.Carbon) is { Ph: > 4 and < 11 } saturated ? saturated.Ph : null;

    private static Speciation? Saturated(Speciation water, FreeAmount free)
    {
        ArgumentNullException.ThrowIfNull(water);
        if (!double.IsFinite(water.SaturationIndex)) return null;
        var beside = free == FreeAmount.Carbon ? water.Composition with { Carbon = 0 } : water.Composition;
        var saturated = new Condition(ConditionKind.CalciteProduct, water.Tableau.LnCalcite, free);
        var result = Equilibrium.Solve(beside, water.Tableau, water.Temperature, water.IsIdeal, saturated, water.Ph, water);
        return result.IsKnown ? result.Value : null;
    }
}
