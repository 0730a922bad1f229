using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>What is asked of the solver beside the mass balances: one linear condition on the logarithms of activity, and the one amount it sets free in return.</summary>
/// <remarks>
/// "This pH was measured" frees the carbon; "just saturated with calcite" frees the calcite that dissolves or precipitates, or the carbon when pH is moved instead. The default asks nothing: all amounts are known.
/// </remarks>
/// <param name="Given">Which condition.</param>
/// <param name="LnActivity">The value it asks for.</param>
/// <param name="Free">Which amount is found by it.</param>
internal readonly record struct Condition(ConditionKind Given, double LnActivity, FreeAmount Free)
{
    /// <summary>The weights of the components in the condition.</summary>
    public void Weights(Span<double> weights)
    {
        weights.Clear();
        if (Given == ConditionKind.HydrogenActivity) weights[(int)Hydrogen] = 1;
        else weights[(int)Calcium] = weights[(int)Carbonate] = 1;
    }

    /// <summary>What a mole of the free amount brings to each total. Carbon enters as carbonic acid, calcite as its ions; neither carries charge.</summary>
    public void Brings(Span<double> totals)
    {
        totals.Clear();
        totals[(int)Carbonate] = 1;
        if (Free == FreeAmount.Carbon) totals[(int)Hydrogen] = 2;
        else totals[(int)Calcium] = 1;
    }
}

/// <summary>Kinds of condition.</summary>
internal enum ConditionKind
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Activity of H+.</summary>
    HydrogenActivity,
    /// <summary>Ion product of calcium and carbonate.</summary>
    CalciteProduct,
}

/// <summary>Amounts that a condition can set free.</summary>
internal enum FreeAmount
{
    /// <summary>Carbonic acid.</summary>
    Carbon = 0,
    /// <summary>Calcite.</summary>
    Calcite,
}
