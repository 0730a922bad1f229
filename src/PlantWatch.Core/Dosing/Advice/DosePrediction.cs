using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Dosing;

/// <summary>What a dose that was given should do to each figure that was tested before it: the other half of the measured response.</summary>
public static class DosePrediction
{
    // Closed calculation, tests rounded, carbon dioxide into the air: what a predicted pH is good for beside strength and volume (common practice).
    private const double OfPh = 0.03;

    // What no test could tell from nothing is not predicted.
    private const double WorthTelling = 0.25;

    private static readonly Measurand[] Figures =
        [Measurand.FreeChlorine, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids];

    /// <summary>The predicted changes; empty when nothing is known of the water.</summary>
    /// <param name="at">The pool, its water and its tests when the dose was given.</param>
    /// <param name="product">The product as it stood in the store.</param>
    /// <param name="kilograms">How much was given.</param>
    public static ImmutableArray<PredictedChange> Of(DoseSituation at, ProductAtHand product, double kilograms)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(product);
        if (!product.IsModelled || !(kilograms > 0)) return [];
        var each = kilograms / DoseVolume.Of(at.Circuit, at.Pool, product).Whole;
        var (water, changes, relative) = (DoseWater.Of(at), DoseChanges.Of(product.PerKilogram, each), SingleDose.Uncertainty(product));
        var predicted = ImmutableArray.CreateBuilder<PredictedChange>();
        foreach (var figure in Figures)
            if (water.Figures.TryGetValue(figure, out var now) && changes.For(figure) is { } change) Add(at, figure, Math.Max(change, -now), relative * Math.Abs(change), predicted);
        if (water.Speciation is { } known && DosedWater.Of(known, product, each) is { } dosed) Ph(at, dosed, relative, predicted);
        return predicted.ToImmutable();
    }

    // A retest comes while the chlorine is part spent: the middle between both ends is taken, and half their distance goes into the uncertainty.
    private static void Ph(DoseSituation at, DosedWater dosed, double relative, ImmutableArray<PredictedChange>.Builder predicted)
    {
        var (first, last) = (dosed.AtOnce.Ph - dosed.Before.Ph, (dosed.Spent ?? dosed.AtOnce).Ph - dosed.Before.Ph);
        var (change, half) = ((first + last) / 2, Math.Abs(first - last) / 2);
        Add(at, Measurand.Ph, change, Math.Sqrt((relative * change * relative * change) + (OfPh * OfPh) + (half * half / 3)), predicted);
    }

    private static void Add(DoseSituation at, Measurand figure, double change, double u, ImmutableArray<PredictedChange>.Builder predicted)
    {
        var test = at.Tests[figure];
        var before = MethodUncertainty.Of(test.Result);
        if (before.IsKnown && Math.Abs(change) >= WorthTelling * before.StandardUncertainty)
            predicted.Add(new(figure, before.Value, before.StandardUncertainty, change, u, test.SampledAt));
    }
}
