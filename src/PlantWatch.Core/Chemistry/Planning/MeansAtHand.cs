using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>Chooses what a plan may use, and what it costs.</summary>
/// <remarks>
/// By price where every product that may be used has one; by mass else, because a price and a mass cannot be added. Prices are counted in the mean price of a unit. Aeration costs patience, not money: it
/// is used only where products alone cannot do it, and so is letting chlorine fall.
/// </remarks>
internal static class MeansAtHand
{
    // In mean prices of a unit: dear enough to be the last resort, cheap enough that amounts keep their digits.
    private const double Patience = 30;
    private const double FeltMoles = 1e-3;

    /// <summary>The means for a water, in the order of the products.</summary>
    public static (Means[] Means, bool ByMass) Of(IReadOnlyList<ProductAtHand> products, IReadOnlyList<Aim> aims)
    {
        var used = products.Where(p => MayBeUsed(p, aims)).ToArray();
        var byMass = used.Any(p => p.CostPerKilogram is null);
        var raw = used.Select(p => (Product: p, Kilograms: FeltMoles / Largest(p.PerKilogram))).ToArray();
        double Price((ProductAtHand Product, double Kilograms) p) => p.Kilograms * (byMass ? 1 : p.Product.CostPerKilogram!.Value);
        var mean = raw.Length == 0 ? 1 : raw.Average(Price) is var m and > 0 ? m : 1;
        var means = raw.Select(p => new Means(MeansKind.Dose, p.Product, p.Kilograms * p.Product.PerKilogram, p.Kilograms, Price(p) / mean)).ToList();
        if (Standing(aims, PlannedFigure.Ph) is not (BandStanding.Unknown or BandStanding.NotTested)) means.Add(new(MeansKind.Aerate, null, new(Carbon: -FeltMoles), 0, Patience));
        if (Standing(aims, PlannedFigure.FreeChlorine) == BandStanding.Above)
            means.Add(new(MeansKind.LetChlorineFall, null, new(Chlorine: -FeltMoles / 10, Chloride: FeltMoles / 10), 0, Patience));
        return ([.. means], byMass);
    }

    // A product whose effect on a figure that was not tested, or is not wanted here at all, cannot be vouched for.
    private static bool MayBeUsed(ProductAtHand product, IReadOnlyList<Aim> aims)
    {
        var adds = product.PerKilogram;
        if (!product.IsModelled || adds == default) return false;
        if (adds.Chlorine < 0) return Standing(aims, PlannedFigure.FreeChlorine) == BandStanding.Above;
        if (adds.Chlorine > 0 && (!IsKnown(Standing(aims, PlannedFigure.FreeChlorine)) || Standing(aims, PlannedFigure.FreeChlorine) == BandStanding.Above)) return false;
        if (adds.Cyanurate > 0 && !IsKnown(Standing(aims, PlannedFigure.CyanuricAcid))) return false;
        if (adds.Calcium > 0 && !IsKnown(Standing(aims, PlannedFigure.CalciumHardness))) return false;
        return product.Plan.Kind != ProductKind.SodiumChloride || Standing(aims, PlannedFigure.DissolvedSolids) == BandStanding.Below;
    }

    private static bool IsKnown(BandStanding standing) => standing is not (BandStanding.Unknown or BandStanding.NotTested);

    private static BandStanding Standing(IReadOnlyList<Aim> aims, PlannedFigure figure) => aims.FirstOrDefault(a => a.Figure == figure)?.Standing ?? BandStanding.Unknown;

    private static double Largest(Composition c) => new[] { c.Carbon, c.Calcium, c.Sodium, c.Chloride, c.Sulfate, c.Cyanurate, 4 * c.Chlorine }.Max(Math.Abs);
}
