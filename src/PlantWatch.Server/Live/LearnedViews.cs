using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>What the line of a probe has learned, and since when.</summary>
internal static class LearnedViews
{
    public static LearnedView? Of(ProbePlan plan, ProbeTrust trust, ImmutableArray<Calibration> calibrations)
    {
        if (TrustLimits.Of(plan.Measurand) is not { Learns: true } limits) return null;
        ImmutableArray<PairedCheck> counted = [.. trust.Pairs.Where(p => !p.Doubted)];
        var since = counted.Length > trust.Taken ? counted[^Math.Max(1, trust.Taken)..] : counted;
        var days = trust.Taken > 1 && since.Length > 1 ? (since[^1].SampledAt - since[0].SampledAt).TotalDays : 0;
        return new LearnedView(
            trust.Taken, limits.ChecksNeeded, days, limits.DaysNeeded, counted.Length > trust.Taken ? Restarted(calibrations, trust.Taken > 0 ? since[0].SampledAt : trust.JudgedAt, trust.Taken == 0) : null,
            trust.Line is { } line ? Math.Pow(10, line.Reference) : null, trust.Line?.Level.OrNull(), trust.Line?.Slope.OrNull());
    }

    // The work on the probe after which the first counted check came; without any, the newest.
    private static Instant? Restarted(ImmutableArray<Calibration> calibrations, Instant first, bool none)
    {
        Instant? newest = null;
        foreach (var c in calibrations)
            if (c.HoldsFrom.IsSet && (none || c.HoldsFrom <= first) && (newest is null || c.HoldsFrom > newest)) newest = c.HoldsFrom;
        return newest;
    }
}
