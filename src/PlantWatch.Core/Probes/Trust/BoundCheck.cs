using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>
/// A test that gives only a bound is no number to learn from, but a trusted probe can contradict it all the same: nil chlorine while ORP stands where milligrams put it is a bleached dye,
/// a pH off the scale while the probe stands in its middle is a slip.
/// </summary>
internal static class BoundCheck
{
    // Standard deviations by which the probe has to lie on the other side of the bound.
    private const double Clearly = 3.5;

    /// <summary>Why the test is doubted; null when the probe does not contradict it, or is not to be trusted so far.</summary>
    public static Reason? Contradicted(ProbeTrust trust, ProbeCheck input)
    {
        if (!trust.Bias.IsKnown || trust.Standing != Standing.Good || input.SignalFails || input.Window is not { Count: > 0, Excluded: 0 } window || !double.IsFinite(window.Mean)) return null;
        var shown = CalibrationsInForce.Correct(input.Calibrations, input.Probe.Id, input.Check.SampledAt, window.Mean) - trust.Bias.Value;
        return input.Probe.Measurand switch
        {
            Measurand.Ph => OfPh(trust, input.Check.Result(Measurand.Ph)!, shown),
            Measurand.Orp => OfNil(trust, input, shown),
            _ => null,
        };
    }

    private static Reason? OfPh(ProbeTrust trust, TestResult test, double shown)
    {
        if (Pairing.IsNumber(test) is null) return null;
        var u = Math.Sqrt((trust.Bias.StandardUncertainty * trust.Bias.StandardUncertainty) + Math.Pow(MethodUncertainty.Parts(test).Total, 2));
        var beyond = IsLow(test) ? shown - test.Value : test.Value - shown;
        return beyond > Clearly * u ? Reason.Of("trust.bound_contradicted", test.Value, shown, "pH") : null;
    }

    private static bool IsLow(TestResult test) => test.Censoring == Censoring.Below || (test.Censoring == Censoring.None && test.Value < 7.4);

    private static Reason? OfNil(ProbeTrust trust, ProbeCheck input, double shown)
    {
        if (trust.Line is not { } line || input.Check.Result(Measurand.FreeChlorine) is not { } test || Pairing.IsNumber(test) is not null || HoclByTest.Enough(test) is null) return null;
        var most = HoclByTest.LeastComparable(test);
        if (HoclByTest.LogarithmOf(input, most) is not { } log) return null;
        var x = log - line.Reference;
        var u = Math.Sqrt(Math.Pow(line.Level.StandardUncertainty, 2) + Math.Pow(x * line.Slope.StandardUncertainty, 2) + Math.Pow(trust.Bias.StandardUncertainty, 2) + Math.Pow(Wander, 2));
        return shown - (line.Level.Value + (line.Slope.Value * x)) > Clearly * u ? Reason.Of("trust.nil_contradicted", test.Value, shown, "mV") : null;
    }

    // What the potential wanders by itself, mV.
    private static double Wander => TrustModel.Of(Measurand.Orp)!.WanderSd;
}
