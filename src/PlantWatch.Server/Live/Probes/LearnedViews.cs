using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>What the line of a probe has learned, and since when.</summary>
internal static class LearnedViews
{
    /// <param name="plan">The probe.</param>
    /// <param name="trust">Its trust.</param>
    /// <param name="calibrations">Its calibrations.</param>
    /// <param name="taken">Sample times of the checks that were taken in, newest first.</param>
    public static LearnedView? Of(ProbePlan plan, ProbeTrust trust, ImmutableArray<Calibration> calibrations, IReadOnlyList<Instant> taken)
    {
        if (TrustLimits.Of(plan.Measurand) is not { Learns: true } limits) return null;
        // The record keeps all checks, the trust only the newest: how long ago the line began is told by the record.
        var first = trust.Taken > 0 && taken.Count > 0 ? taken[Math.Min(trust.Taken, taken.Count) - 1] : trust.JudgedAt;
        var days = trust.Taken > 1 && taken.Count > 1 ? (taken[0] - first).TotalDays : 0;
        var restarted = taken.Count > trust.Taken ? Restarted(calibrations, first, trust.Taken == 0) : null;
        return new LearnedView(
            trust.Taken, limits.ChecksNeeded, days, limits.DaysNeeded, restarted,
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
