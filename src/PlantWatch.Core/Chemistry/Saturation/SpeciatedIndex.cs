namespace PlantWatch.Core.Chemistry;

/// <summary>The saturation index by the speciated model: activity of calcium times activity of carbonate over the solubility of calcite.</summary>
public static class SpeciatedIndex
{
    /// <summary>What the model may claim, +- at k = 2: between two databases of constants it differs by that much.</summary>
    public const double Claim = 2 * Equilibrium.ModelUncertainty;

    /// <summary>The index of a speciated water, or why there is none.</summary>
    public static IndexResult Of(EquilibriumResult result)
    {
        if (result.Saying() is { } failure) return IndexResult.Not(failure, Claim);
        if (result.Value.Composition.Calcium <= 0) return IndexResult.Not(Reasons.Reason.Of("balance.no_calcium"), Claim);
        return result.Value.Composition.Carbon > 0
            ? IndexResult.Of(result.Value.SaturationIndex, Claim)
            : IndexResult.Not(Reasons.Reason.Of("balance.no_carbonate"), Claim);
    }
}
