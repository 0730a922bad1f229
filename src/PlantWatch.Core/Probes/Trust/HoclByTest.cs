using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>log10 of hypochlorous acid (mg/L as Cl2) by the tests of one check: what ORP follows at a pool's own level.</summary>
internal static class HoclByTest
{
    // Below this share of its own uncertainty a chlorine figure has no logarithm worth taking.
    private const double LeastChlorineInU = 3;

    // Cyanuric acid that only traces of stabiliser left behind does not move the share noticeably.
    private const double CyanurateFrom = 5;

    public static (Estimate Test, double Shared) Of(ProbeCheck input, out Reason? why)
    {
        why = Unsuitable(input);
        if (why is not null) return default;
        var chlorine = input.Check.Result(Measurand.FreeChlorine)!;
        why = Pairing.IsNumber(chlorine) ?? Enough(chlorine);
        if (why is not null) return default;
        var ph = PhOf(input, out why);
        if (why is not null) return default;
        if (WaterCelsius(input) is not { } celsius) { why = Reason.Of("pair.needs_temperature"); return default; }
        return (Logarithm(chlorine, ph, celsius, CyanurateOf(input)), 0);
    }

    /// <summary>log10 of the hypochlorous acid that this much free chlorine would be in the sampled water; null when that cannot be said.</summary>
    public static double? LogarithmOf(ProbeCheck input, double chlorine) =>
        Unsuitable(input) is null && PhOf(input, out var why) is var ph && why is null && WaterCelsius(input) is { } celsius
            ? Math.Log10(chlorine * Share(ph.Value, celsius, chlorine, CyanurateOf(input))) : null;

    // Probe and test together know the pH best; a spoiled pH test must not put the blame on the chlorine.
    private static Estimate PhOf(ProbeCheck input, out Reason? why)
    {
        why = null;
        if (input.BelievedPh.IsKnown) return input.BelievedPh;
        if (input.Check.Result(Measurand.Ph) is not { } ph)
        {
            why = Reason.Of("pair.needs_ph");
            return default;
        }

        why = Pairing.IsNumber(ph);
        return why is null ? new(ph.Value, MethodUncertainty.Parts(ph).Random) : default;
    }

    private static Reason? Unsuitable(ProbeCheck input)
    {
        foreach (var pool in input.Plan.Pools)
            if (pool.Id == input.Check.PoolId)
            {
                if (pool.Disinfectant == Disinfectant.Bromine) return Reason.Of("pair.bromine");
                if (pool.Disinfectant == Disinfectant.StabilisedChlorine && CyanurateOf(input) is null) return Reason.Of("pair.cyanurate");
            }

        return null;
    }

    private static double? CyanurateOf(ProbeCheck input) => input.Check.Result(Measurand.CyanuricAcid)?.Value ?? input.Cyanurate;

    internal static Reason? Enough(TestResult chlorine) =>
        chlorine.Value < LeastComparable(chlorine) ? Reason.Of("pair.too_little_chlorine", chlorine.Value) : null;

    /// <summary>The least free chlorine whose logarithm is worth taking, mg/L as Cl2.</summary>
    internal static double LeastComparable(TestResult chlorine) => LeastChlorineInU * MethodUncertainty.Parts(chlorine).Random;

    private static double? WaterCelsius(ProbeCheck input) =>
        input.Check.Result(Measurand.Temperature) is { Censoring: Censoring.None } tested ? tested.Value
        : input.WaterTemperature is { Count: > 0 } window ? window.Mean : null;

    // A spa at 38 degC lies beyond the equation's range, as does water far off. The line is this pool's own, so a constant factor does no harm: the nearest end is taken.
    private static double Share(double ph, double celsius, double chlorine, double? cyanurate)
    {
        var range = HoclShare.ValidCelsius;
        var at = Celsius.From(Math.Clamp(celsius, range.Low, range.High));
        if (cyanurate is not >= CyanurateFrom) return HoclShare.Of(Ph.From(ph), at).Share;
        var split = ChlorineSplit.Of(new(Ph.From(ph), at, FreeChlorine.From(chlorine), CyanuricAcid.From(cyanurate.Value)));
        return split.IsKnown ? split.Value.Share : HoclShare.Of(Ph.From(ph), at).Share;
    }

    // Only what differs from test to test counts: what instrument and lot share, and an error of the cyanuric acid, the learned level absorbs.
    private static Estimate Logarithm(TestResult chlorine, Estimate ph, double celsius, double? cyanurate)
    {
        var share = Share(ph.Value, celsius, chlorine.Value, cyanurate);
        var uChlorine = MethodUncertainty.Parts(chlorine).Random / (chlorine.Value * Math.Log(10));
        var uPh = (1 - share) * ph.StandardUncertainty;
        return new(Math.Log10(chlorine.Value * share), Math.Sqrt((uChlorine * uChlorine) + (uPh * uPh)));
    }
}
