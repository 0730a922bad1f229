using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>How a value goes: too fast for the plant, or towards a limit. Looked at with each block, and only where the probe can be believed.</summary>
internal static class TrendFold
{
    /// <summary>The longest way ahead that is worth a word.</summary>
    private const double AheadHours = 1;

    // What is taken back has to be well away, so that it does not come and go: a common habit with deadbands.
    private const double StillFast = 0.7;
    private const double StillAhead = 1.5;

    /// <summary>The trail with a reading more. It begins anew where the probe was blind, was worked on or leapt; what a leap under way reads is left out.</summary>
    public static ValueTrail Hear(Draft draft, int index, SignalHealth signal, Quality quality, Instant at, double value)
    {
        if (draft.Index.Trends[index] is not { } setting) return default;
        var before = draft.Probes[index];
        if (!quality.IsGood() || signal.BlindAt == at || signal.LeaptAt != before.Signal.LeaptAt) return default;
        return signal.LastDoubted ? before.Trail : before.Trail.Hear(at, value, setting.Block);
    }

    /// <summary>A block has closed.</summary>
    public static void Look(Draft draft, int index, Instant at)
    {
        var (probe, plan, setting) = (draft.Probes[index], draft.Plan.Probes[index], draft.Index.Trends[index]!);
        if (!IsBelieved(probe) || !Trend.TryOf(probe.Trail, setting.Block, setting.Resolution, out var trend)) return;
        LookAtPace(draft, index, plan, setting, trend, at);
        LookAhead(draft, index, plan, trend, at);
    }

    private static bool IsBelieved(ProbeState probe) => IsBelieved(probe.Signal.Standing) && IsBelieved(probe.Trust.Standing);

    private static bool IsBelieved(Standing standing) => standing is Standing.Good or Standing.Unknown or Standing.MaintenanceRequired;

    private static void LookAtPace(Draft draft, int index, ProbePlan plan, TrendSetting setting, Trend trend, Instant at)
    {
        var key = draft.Index.FastKeys[index];
        var holds = draft.Alarms.IsActive(key) ? Math.Abs(trend.Slope) > StillFast * setting.FastPerHour : trend.SurelyAtLeast > setting.FastPerHour;
        if (!holds && !draft.Alarms.Knows(key)) return;
        draft.Alarms.Look(RuleBook.ChangesTooFast, key, plan.Id, holds, at, () => Reason.Of(
            trend.Slope > 0 ? "trend.rises_fast" : "trend.falls_fast", plan.Name, Math.Abs(trend.Slope), Trend.T * trend.SlopeError, setting.FastPerHour, plan.Measurand.Unit()));
    }

    private static void LookAhead(Draft draft, int index, ProbePlan plan, Trend trend, Instant at)
    {
        var key = draft.Index.HeadsKeys[index];
        var active = draft.Alarms.IsActive(key);
        var end = NextLimit(draft, index, trend);
        var time = default(TimeToLimit);
        var holds = end is { } aim && IsWorthMoving(plan, trend) && TimeToLimit.TryOf(trend, aim, out time) && IsWorthAWord(time, active);
        if (!holds && !draft.Alarms.Knows(key)) return;
        draft.Alarms.Look(RuleBook.HeadsForLimit, key, plan.Id, holds, at, () => Reason.Of(
            trend.Slope > 0 ? "trend.heads_high" : "trend.heads_low", plan.Name, end ?? 0, time.Earliest * 60, time.Latest * 60, trend.Now, plan.Measurand.Unit()), renew: true);
    }

    // The nearest that is still ahead: beyond an operating limit the closure limit is the next.
    private static double? NextLimit(Draft draft, int index, Trend trend)
    {
        if (draft.Index.PoolOf[index] is not (>= 0 and var pool)) return null;
        var (quantity, rises) = (draft.Index.Limiting[index], trend.Slope > 0);
        double? next = null;
        foreach (var bound in draft.Pools[pool].Limits.Bounds)
            if (bound.Quantity == quantity && (rises ? bound.High : bound.Low) is { } end && (rises ? end > trend.Now : end < trend.Now))
                next = next is not { } found || (rises ? end < found : end > found) ? end : next;
        return next;
    }

    // A value that lies on the edge of its limit and creeps is no trend: in an hour it has to go two deadbands.
    private static bool IsWorthMoving(ProbePlan plan, Trend trend) => Math.Abs(trend.Slope) * AheadHours >= 2 * Deadband.Of(plan.Measurand);

    // Said only when its late end is within the hour and not more than twice as far off as its best value: nobody can act on "in 5 minutes to 3 hours".
    private static bool IsWorthAWord(TimeToLimit time, bool active) =>
        active ? time.Hours <= StillAhead * AheadHours : time.Latest <= AheadHours && time.Latest - time.Earliest <= time.Hours;
}
