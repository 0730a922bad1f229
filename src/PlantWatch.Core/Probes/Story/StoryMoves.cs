using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>Whether the water moved since the check before, with test and probe seeing the same.</summary>
internal static class StoryMoves
{
    // What is worth telling (common practice): a fifth of pH, half as much chlorine again.
    private const double PhWorthTelling = 0.2;
    private const double ChlorineFactor = 1.5;

    // Two checks of one shift or one night; further apart a pool changes anyway.
    private static readonly TimeSpan Between = TimeSpan.FromHours(30);

    /// <summary>What moved, in words; null when nothing did that both saw.</summary>
    public static Reason? Together(StoryInput input)
    {
        foreach (var probe in input.Probes)
            if (Moved(input, probe) is { } moved) return moved;
        return null;
    }

    private static Reason? Moved(StoryInput input, StoryProbe probe)
    {
        var pairs = probe.Trust.Pairs;
        var at = pairs.Length - 1;
        while (at >= 0 && pairs[at].CheckId != input.CheckId) at--;
        if (at < 1 || pairs[at].SampledAt - pairs[at - 1].SampledAt > Between) return null;
        var (now, then) = (pairs[at], pairs[at - 1]);
        var (test, read) = (now.Test.Value - then.Test.Value, now.Raw.Value - then.Raw.Value);
        if (Math.Sign(test) != Math.Sign(read) || !IsSure(test, now.Test, then.Test) || !IsSure(read, now.Raw, then.Raw)) return null;
        var hours = (now.SampledAt - then.SampledAt).TotalHours;
        return probe.Plan.Measurand switch
        {
            Measurand.Ph when Math.Abs(test) >= PhWorthTelling => Reason.Of("story.moved_ph", then.Test.Value, now.Test.Value, read, hours, "pH"),
            Measurand.FreeChlorine when IsMuch(then.Test.Value, now.Test.Value) => Reason.Of("story.moved_chlorine", then.Test.Value, now.Test.Value, hours, "mg/L"),
            Measurand.Orp when Math.Abs(test) >= Math.Log10(ChlorineFactor) => Reason.Of("story.moved_orp", Math.Pow(10, test), read, hours),
            _ => null,
        };
    }

    private static bool IsMuch(double then, double now) => Math.Max(then, now) > ChlorineFactor * Math.Max(0.05, Math.Min(then, now));

    private static bool IsSure(double moved, Estimate a, Estimate b) =>
        Math.Abs(moved) > 2 * Math.Sqrt((a.StandardUncertainty * a.StandardUncertainty) + (b.StandardUncertainty * b.StandardUncertainty));
}
