using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A good reading against the stops that always hold, the closure limits and the operating limits of its pool.</summary>
internal static class LimitFold
{
    public static void Look(Draft draft, int index, ProbePlan plan, Instant at, double raw, double value)
    {
        if (draft.Index.Stops[index] is { } stop) LookAtStop(draft, plan, at, raw, value, stop);
        if (draft.Index.PoolOf[index] is not (>= 0 and var pool)) return;
        var quantity = draft.Index.Limiting[index];
        foreach (var bound in draft.Pools[pool].Limits.Bounds)
        {
            if (bound.Quantity != quantity) continue;
            if (bound.Grade == RowGrade.Closure) LookAtClosure(draft, index, plan, at, raw, value, bound);
            else LookAtOperating(draft, index, plan, at, value, bound);
        }
    }

    private static void LookAtOperating(Draft draft, int index, ProbePlan plan, Instant at, double value, LimitBound bound)
    {
        var tuning = draft.Index.Tunings[index];
        if (bound.Low is { } low) LookAt(draft, tuning.Below, draft.Index.LowKeys[index], plan, at, value, low, tuning.Deadband, isLow: true);
        if (bound.High is { } high) LookAt(draft, tuning.Above, draft.Index.HighKeys[index], plan, at, value, high, tuning.Deadband, isLow: false);
    }

    // Doubt never makes safe: the raw number is looked at beside the corrected one, so that no calibration can hide an extreme.
    private static void LookAtStop(Draft draft, ProbePlan plan, Instant at, double raw, double value, StopOnProbe on)
    {
        var (stop, rule, key) = on;
        var band = draft.Alarms.IsActive(key) ? Deadband.Of(plan.Measurand) : 0;
        var holds = Outside(raw, stop.Low, stop.High, band) || Outside(value, stop.Low, stop.High, band);
        if (holds || draft.Alarms.Knows(key)) TellStop(draft, rule, key, plan, holds, at, Outside(value, stop.Low, stop.High, band) ? value : raw, stop, band);
    }

    // A pool is closed by what is outside, read or corrected: a limit of closure is not softened by anything.
    private static void LookAtClosure(Draft draft, int index, ProbePlan plan, Instant at, double raw, double value, LimitBound bound)
    {
        var key = draft.Index.ClosureKeys[index];
        var band = draft.Alarms.IsActive(key) ? Deadband.Of(plan.Measurand) : 0;
        var holds = Outside(raw, bound.Low, bound.High, band) || Outside(value, bound.Low, bound.High, band);
        if (holds || draft.Alarms.Knows(key)) TellClosure(draft, key, plan, holds, at, Outside(value, bound.Low, bound.High, band) ? value : raw, bound, band);
    }

    // Apart, as below: what a cause is made of is only put together when somebody asks, and nearly no reading does.
    private static void TellStop(Draft draft, Rule rule, string key, ProbePlan plan, bool holds, Instant at, double shown, ValueRange stop, double band) =>
        draft.Alarms.Look(rule, key, plan.Id, holds, at, () => Reason.Of(
            shown < stop.Low + band ? "limit.below_stop" : "limit.above_stop", plan.Name, shown, shown < stop.Low + band ? stop.Low : stop.High, plan.Measurand.Unit()));

    private static void TellClosure(Draft draft, string key, ProbePlan plan, bool holds, Instant at, double shown, LimitBound bound, double band) =>
        draft.Alarms.Look(RuleBook.OutsideClosure, key, plan.Id, holds, at, () => shown < bound.Low + band
            ? Reason.Of("limit.below_closure", plan.Name, shown, bound.Low ?? 0, plan.Measurand.Unit(), bound.LowFrom)
            : Reason.Of("limit.above_closure", plan.Name, shown, bound.High ?? 0, plan.Measurand.Unit(), bound.HighFrom));

    private static bool Outside(double value, double? low, double? high, double band) => value < low + band || value > high - band;

    private static void LookAt(Draft draft, Rule rule, string key, ProbePlan plan, Instant at, double value, double limit, double deadband, bool isLow)
    {
        var band = draft.Alarms.IsActive(key) ? deadband : 0;
        var holds = isLow ? value < limit + band : value > limit - band;
        if (holds || draft.Alarms.Knows(key)) Tell(draft, rule, key, plan, holds, at, value, limit, isLow);
    }

    private static void Tell(Draft draft, Rule rule, string key, ProbePlan plan, bool holds, Instant at, double value, double limit, bool isLow) =>
        draft.Alarms.Look(rule, key, plan.Id, holds, at, () => Reason.Of(isLow ? "limit.below" : "limit.above", plan.Name, value, limit, plan.Measurand.Unit()));
}
