using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>How much of a product a wanted change takes.</summary>
public static class DoseAmount
{
    /// <summary>Changes in mg/L that can be asked for.</summary>
    public static ValueRange ValidChange { get; } = new(-5000, 20_000);

    /// <summary>kg of product for a change of alkalinity, hardness, free chlorine, cyanuric acid or solids, by stoichiometry: volume x change / what a kg brings.</summary>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="target">The figure to move.</param>
    /// <param name="change">By how much, in mg/L; negative to lower it.</param>
    /// <param name="cubicMetres">Volume of the water.</param>
    public static Figure ForChange(ProductAtHand product, Measurand target, double change, double cubicMetres)
    {
        ArgumentNullException.ThrowIfNull(product);
        return Fits(product, target, Math.Sign(change))
            .Within("volume", cubicMetres, Turnover.ValidCubicMetres, "m3").Within("change", change, ValidChange, "mg/L")
            .And(target != Measurand.Ph, () => Reason.Of("dose.ph_needs_the_water"))
            .Then(() => cubicMetres * change / DoseChanges.Of(product.PerKilogram, 1).For(target)!.Value);
    }

    /// <summary>kg of product that bring a water to a pH: found on the equilibrium, closed to the air.</summary>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="water">The water now.</param>
    /// <param name="ph">The pH wanted.</param>
    /// <param name="cubicMetres">Volume of the water.</param>
    public static Figure ForPh(ProductAtHand product, Speciation water, double ph, double cubicMetres)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(water);
        var direction = Math.Sign(ph - water.Ph);
        var check = Fits(product, Measurand.Ph, direction)
            .Within("volume", cubicMetres, Turnover.ValidCubicMetres, "m3").Within("ph", ph, Equilibrium.ValidPh, "");
        if (check.Why is { } why) return Figure.Not(why);
        return Search(product, water, ph, direction) is { } each ? Figure.Of(each * cubicMetres) : Figure.Not(Reason.Of("dose.ph_out_of_reach", ph));
    }

    // Acid always lowers pH and base always raises it: bracket by doubling, then halve.
    private static double? Search(ProductAtHand product, Speciation water, double ph, int direction)
    {
        if (direction == 0) return 0;
        double low = 0, high = 0.001;
        for (var i = 0; !Reached(high); i++)
        {
            if (i == 16) return null;
            (low, high) = (high, 2 * high);
        }

        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (Reached(middle)) high = middle;
            else low = middle;
        }

        return high;

        bool Reached(double kilogramsEach) => Dosing(water, product, kilogramsEach) is not { IsKnown: true } there || direction * (there.Value.Ph - ph) >= 0;
    }

    /// <summary>The water with so many kg in each m3, at once.</summary>
    internal static EquilibriumResult Dosing(Speciation water, ProductAtHand product, double kilogramsPerCubicMetre) =>
        Equilibrium.After(water, With(water.Composition, (kilogramsPerCubicMetre / 1000) * product.PerKilogram));

    /// <summary>A water and a dose. More dechlorinator than there is chlorine takes what there is.</summary>
    internal static Composition With(Composition water, Composition dose)
    {
        var sum = water + dose;
        return sum.Chlorine >= 0 ? sum : sum with { Chlorine = 0, Chloride = sum.Chloride + sum.Chlorine };
    }

    private static InputCheck Fits(ProductAtHand product, Measurand target, int direction) => new InputCheck()
        .And(product.IsModelled, () => Reason.Of("dose.not_worked_out", product.Plan.Name))
        .And(ProductUse.Direction(product.Plan.Kind, target) != 0, () => Reason.Of("dose.not_for_this", product.Plan.Name, target.Key()))
        .And(direction == 0 || ProductUse.Direction(product.Plan.Kind, target) == direction,
            () => Reason.Of(ProductUse.Direction(product.Plan.Kind, target) > 0 ? "dose.only_raises" : "dose.only_lowers", product.Plan.Name, target.Key()));
}
