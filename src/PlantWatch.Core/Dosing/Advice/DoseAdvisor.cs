using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>Works out one dose of one product, or says why there is none. Pure; advises and never commands.</summary>
public static class DoseAdvisor
{
    /// <summary>Free chlorine in mg/L up to which it is raised with the pool open where the plant has set no limit (common practice).</summary>
    public const double UsualHighestChlorine = 5;

    /// <summary>Hours to a retest where the turnover time is not known (common practice).</summary>
    public const double UsualRetestHours = 6;

    // Halving is for what a closed calculation gets wrong: pH, and chlorine taken away.
    private const double Half = 0.5;
    private const double SmallPhChange = 0.1;

    /// <summary>The advice.</summary>
    /// <param name="at">All that the dose is judged by.</param>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="target">The figure to move.</param>
    /// <param name="value">Where to, in its unit.</param>
    public static DoseAdvice Of(DoseSituation at, ProductAtHand product, Measurand target, double value)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(product);
        var volume = DoseVolume.Of(at.Circuit, at.Pool, product);
        var water = DoseWater.Of(at);
        var hours = at.Circuit.TurnoverHours is { } turnover ? MixingTime.ToRetest(turnover).OrNull : null;
        var advice = new DoseAdvice
        {
            Refused = DoseRefusals.Of(at, product, target, value, volume),
            Volume = volume,
            Product = product,
            Target = target,
            Value = value,
            From = DoseWater.Now(at, target),
            RetestHours = hours ?? UsualRetestHours,
            Says = [.. product.Strength.Says, .. DoseSayings.OfPool(at, product, target), .. DoseSayings.OfHold(at, product, target, value), .. water.Says, .. hours is null ? (Reason[])[Reason.Of("dose.turnover_unknown", UsualRetestHours)] : []],
            How = DoseSayings.How(product, volume),
            Equipment = ProductHazards.Equipment(product.Plan.Kind),
            Precautions = DoseSayings.Precautions(at, product),
        };
        return advice.Refused.IsEmpty ? Work(at, advice, water) : advice;
    }

    private static DoseAdvice Work(DoseSituation at, DoseAdvice advice, DoseWater water)
    {
        var (product, volume) = (advice.Product, advice.Volume);
        var amount = Amount(advice, water, out var change);
        if (!amount.IsKnown) return advice with { Refused = [amount.Why!, .. water.Missing] };
        if (amount.Value <= 0) return advice with { Refused = [Reason.Of("dose.nothing_to_do", advice.Target.Key())] };
        var cap = DoseCap.Of(water.Speciation, water.Now(advice), product, amount.Value / volume.First, DoseLimitsOf.Situation(at, advice));
        var part = Math.Min(cap.Part, Share(advice, change));
        if (part <= 0) return advice with { Refused = [Reason.Of("dose.no_step_allowed"), .. cap.Because] };
        ImmutableArray<Reason> because = part < cap.Part ? [Reason.Of("dose.half_and_retest")] : cap.Because;
        var each = part * amount.Value / volume.Whole;
        var predicted = water.Speciation is { } known ? DosedWater.Of(known, product, each) : null;
        return advice with
        {
            Dose = new(amount.Value, part * amount.Value, SingleDose.Uncertainty(product), because, DoseChanges.Of(product.PerKilogram, each), predicted, SideEffects.Of(product, advice.Target, each, predicted)),
            Says = predicted is null ? [.. advice.Says, Reason.Of("dose.no_prediction"), .. water.Missing] : advice.Says,
        };
    }

    private static Figure Amount(DoseAdvice advice, DoseWater water, out double change)
    {
        change = advice.Value - (advice.From ?? advice.Value);
        if (advice.Target != Measurand.Ph) return DoseAmount.ForChange(advice.Product, advice.Target, change, advice.Volume.Whole);
        return water.Speciation is { } known
            ? DoseAmount.ForPh(advice.Product, known, advice.Value, advice.Volume.Whole)
            : Figure.Not(Reason.Of("dose.ph_needs_the_water"));
    }

    private static double Share(DoseAdvice advice, double change) => (advice.Target, advice.Product.Facts.IsDechlorinator) switch
    {
        (Measurand.Ph, _) when Math.Abs(change) > SmallPhChange => Half,
        (_, true) when Math.Abs(change) > 1 => Math.Max(Half, 1 / Math.Abs(change)),
        _ => 1,
    };
}
