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
        if (input.Check.Result(Measurand.Ph) is not { } ph) { why = Reason.Of("pair.needs_ph"); return default; }
        why = Pairing.IsNumber(ph);
        if (why is not null) return default;
        if (WaterCelsius(input) is not { } celsius) { why = Reason.Of("pair.needs_temperature"); return default; }
        return (Logarithm(chlorine, ph, Share(ph.Value, celsius)), 0);
    }

    private static Reason? Unsuitable(ProbeCheck input)
    {
        foreach (var pool in input.Plan.Pools)
            if (pool.Id == input.Check.PoolId)
            {
                if (pool.Disinfectant == Disinfectant.Bromine) return Reason.Of("pair.bromine");
                if (pool.Disinfectant == Disinfectant.StabilisedChlorine) return Reason.Of("pair.cyanurate");
            }

        var tested = input.Check.Result(Measurand.CyanuricAcid)?.Value ?? input.Cyanurate ?? 0;
        return tested >= CyanurateFrom ? Reason.Of("pair.cyanurate") : null;
    }

    private static Reason? Enough(TestResult chlorine) =>
        chlorine.Value < LeastChlorineInU * MethodUncertainty.Parts(chlorine).Random ? Reason.Of("pair.too_little_chlorine", chlorine.Value) : null;

    private static double? WaterCelsius(ProbeCheck input) =>
        input.Check.Result(Measurand.Temperature) is { Censoring: Censoring.None } tested ? tested.Value
        : input.WaterTemperature is { Count: > 0 } window ? window.Mean : null;

    // A spa at 38 degC lies beyond the equation's range. The line is this pool's own, so a constant factor does no harm: the nearest end is taken.
    private static double Share(double ph, double celsius)
    {
        var range = HoclShare.ValidCelsius;
        return HoclShare.Of(Ph.From(ph), Celsius.From(Math.Clamp(celsius, range.Low, range.High))).Share;
    }

    // Only what differs from test to test counts: what instrument and lot share, the learned level absorbs.
    private static Estimate Logarithm(TestResult chlorine, TestResult ph, double share)
    {
        var uChlorine = MethodUncertainty.Parts(chlorine).Random / (chlorine.Value * Math.Log(10));
        var uPh = (1 - share) * MethodUncertainty.Parts(ph).Random;
        return new(Math.Log10(chlorine.Value * share), Math.Sqrt((uChlorine * uChlorine) + (uPh * uPh)));
    }
}
