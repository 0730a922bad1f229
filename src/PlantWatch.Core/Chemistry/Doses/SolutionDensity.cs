using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>Density of the liquid products at about 20 degC, where the plant file gives none, in kg/L.</summary>
/// <remarks>
/// Acids: 31.45 and 32 % hydrochloric acid 1.160, 38.5 % sulfuric acid 1.280 as in the reference rows of the doses; the other points, caustic and hypochlorite from memory, good to 2 %.
/// Between points a straight line; beyond the last point the last one.
/// </remarks>
public static class SolutionDensity
{
    private static readonly (double Fraction, double Density)[] Hydrochloric = [(0, 0.998), (0.10, 1.047), (0.20, 1.098), (0.3145, 1.160), (0.37, 1.184)];
    private static readonly (double Fraction, double Density)[] Sulfuric = [(0, 0.998), (0.10, 1.066), (0.20, 1.139), (0.385, 1.280), (0.50, 1.395), (0.70, 1.611), (0.93, 1.828), (0.98, 1.836)];
    private static readonly (double Fraction, double Density)[] Caustic = [(0, 0.998), (0.10, 1.109), (0.20, 1.219), (0.32, 1.349), (0.50, 1.525)];

    // By weight of available chlorine: 12.5 trade per cent is 10.4 % at 1.20.
    private static readonly (double Fraction, double Density)[] Hypochlorite = [(0, 0.998), (0.05, 1.08), (0.104, 1.20), (0.13, 1.25)];

    /// <summary>Density in kg/L of a solution; null for what is not sold as one.</summary>
    /// <param name="kind">The product.</param>
    /// <param name="fraction">Its strength as a fraction by weight; available chlorine for hypochlorite.</param>
    public static double? Of(ProductKind kind, double fraction) => Points(kind) is { } points ? Between(points, fraction) : null;

    /// <summary>Density in kg/L of a hypochlorite solution of so many g of available chlorine in 100 mL.</summary>
    public static double OfTradePercent(double percent)
    {
        // g a litre over density is the fraction, and density follows from the fraction: a few rounds settle it.
        var density = 1.2;
        for (var round = 0; round < 20; round++) density = Between(Hypochlorite, percent / 100 / density);
        return density;
    }

    private static (double Fraction, double Density)[]? Points(ProductKind kind) => kind switch
    {
        ProductKind.HydrochloricAcid => Hydrochloric,
        ProductKind.SulfuricAcid => Sulfuric,
        ProductKind.SodiumHydroxide => Caustic,
        ProductKind.SodiumHypochlorite => Hypochlorite,
        _ => null,
    };

    private static double Between((double Fraction, double Density)[] points, double fraction)
    {
        for (var i = 1; i < points.Length; i++)
        {
            if (fraction > points[i].Fraction) continue;
            var (low, high) = (points[i - 1], points[i]);
            return low.Density + ((fraction - low.Fraction) / (high.Fraction - low.Fraction) * (high.Density - low.Density));
        }

        return points[^1].Density;
    }
}
