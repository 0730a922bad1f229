using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Stock;

/// <summary>How strong what stands in a tank was on a day: what was left of the old and what came to it, mixed.</summary>
/// <param name="Strength">Per cent, of the meaning that the plant file gives for the product.</param>
/// <param name="On">The day this held; hypochlorite loses strength from then on.</param>
/// <param name="Batch">Batch of the newest that went in; null when nobody said.</param>
public sealed record TankMix(double Strength, DateOnly On, string? Batch)
{
    /// <summary>What came by its label, aged from the day it was made to the day it went in.</summary>
    /// <param name="product">The product as the plant file has it.</param>
    /// <param name="label">Strength on the label, per cent.</param>
    /// <param name="madeOn">The day it was made.</param>
    /// <param name="today">The day it went in.</param>
    public static double Aged(ProductPlan product, double label, DateOnly madeOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(product);
        var strength = ProductAtHand.Of(By(product, label, madeOn, null), today).Strength;
        return strength.Fresh > 0 ? label * strength.Fraction / strength.Fresh : label;
    }

    /// <summary>How strong it is by now, per cent.</summary>
    public double Now(ProductPlan product, DateOnly today) => Aged(product, Strength, On, today);

    /// <summary>What comes of an old content and a new one. Trade per cent mix by volume, per cent by weight by mass.</summary>
    /// <param name="product">The product as the plant file has it.</param>
    /// <param name="oldLitres">Litres that were left.</param>
    /// <param name="oldStrength">Their strength on that day, per cent.</param>
    /// <param name="newLitres">Litres that came to them.</param>
    /// <param name="newStrength">Their strength on that day, per cent.</param>
    public static double Of(ProductPlan product, double oldLitres, double oldStrength, double newLitres, double newStrength)
    {
        ArgumentNullException.ThrowIfNull(product);
        var (old, added) = (oldLitres * Weight(product, oldStrength), newLitres * Weight(product, newStrength));
        return old + added > 0 ? ((old * oldStrength) + (added * newStrength)) / (old + added) : newStrength;
    }

    /// <summary>The product as it was delivered: its label's strength and day, and no older assay.</summary>
    public static ProductPlan By(ProductPlan product, double strength, DateOnly on, string? batch)
    {
        ArgumentNullException.ThrowIfNull(product);
        return product with { Strength = strength, StrengthOn = on, Assay = null, AssayedOn = null, FromBatch = batch };
    }

    private static double Weight(ProductPlan product, double strength) =>
        product.Means == StrengthMeaning.Trade ? 1 : ProductAtHand.Of(By(product, strength, DateOnly.MinValue, null) with { StrengthOn = null }, DateOnly.MinValue).KilogramsPerLitre ?? 1;
}
