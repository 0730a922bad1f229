using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The pH of the sampled water by a trusted probe and the test together: each by its own uncertainty, and by the probe alone where the test is doubted.</summary>
internal static class BelievedPh
{
    /// <summary>The estimate; unknown when no trusted probe saw that water.</summary>
    public static Estimate Of(Draft draft, CheckEntered said)
    {
        for (var i = 0; i < draft.Probes.Length; i++)
        {
            var plan = draft.Plan.Probes[i];
            if (plan.Measurand != Measurand.Ph || plan.PoolId != said.Check.PoolId) continue;
            if (ByProbe(draft, i, said) is { IsKnown: true } shown) return Together(shown, draft.Probes[i].Trust, said.Check);
        }

        return default;
    }

    private static Estimate ByProbe(Draft draft, int index, CheckEntered said)
    {
        var probe = draft.Probes[index];
        if (probe.Trust is not { Standing: Standing.Good, Bias: { IsKnown: true } bias } || probe.Signal.Standing == Standing.Failure) return default;
        if (CheckFold.WindowOf(said, probe.Id) is not { Count: > 0, Excluded: 0 } window || !(window.StandardDeviation >= 0)) return default;
        var value = draft.Calibrations.Correct(index, said.Check.SampledAt, window.Mean) - bias.Value;
        var u = Math.Sqrt((bias.StandardUncertainty * bias.StandardUncertainty) + (window.StandardDeviation * window.StandardDeviation / window.Count));
        return Quantity.TryFrom(value, out Ph _) ? new(value, u) : default;
    }

    private static Estimate Together(Estimate shown, ProbeTrust trust, ManualCheck check)
    {
        if (check.Result(Measurand.Ph) is not { Censoring: Censoring.None } test || !MethodRange.Holds(test)) return shown;
        foreach (var pair in trust.Pairs)
            if (pair.CheckId == check.Id && pair.Doubted) return shown;
        var tested = MethodUncertainty.Of(test);
        var (a, b) = (1 / (shown.StandardUncertainty * shown.StandardUncertainty), 1 / (tested.StandardUncertainty * tested.StandardUncertainty));
        return new(((a * shown.Value) + (b * tested.Value)) / (a + b), Math.Sqrt(1 / (a + b)));
    }
}
