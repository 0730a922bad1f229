namespace PlantWatch.Core.Chemistry;

/// <summary>A water before a dose, at once after it, and once the chlorine of the dose has done its work.</summary>
/// <param name="Before">Before.</param>
/// <param name="AtOnce">Mixed and in equilibrium: closed, no carbon dioxide lost, nothing precipitated.</param>
/// <param name="Spent">After the added chlorine has become chloride; null for a product without.</param>
public sealed record DosedWater(Speciation Before, Speciation AtOnce, Speciation? Spent)
{
    /// <summary>Works a dose out; null when the water after it lies outside what the equilibrium is good for.</summary>
    /// <param name="water">The water before.</param>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="kilogramsPerCubicMetre">kg of product in each m3.</param>
    public static DosedWater? Of(Speciation water, ProductAtHand product, double kilogramsPerCubicMetre)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(product);
        if (DoseAmount.Dosing(water, product, kilogramsPerCubicMetre) is not { IsKnown: true } atOnce) return null;
        var added = product.PerKilogram.Chlorine * kilogramsPerCubicMetre / 1000;
        if (added <= 0) return new(water, atOnce.Value, null);
        var mixed = atOnce.Value.Composition;
        var spent = Equilibrium.After(atOnce.Value, mixed with { Chlorine = mixed.Chlorine - added, Chloride = mixed.Chloride + added });
        return new(water, atOnce.Value, spent.IsKnown ? spent.Value : null);
    }
}
