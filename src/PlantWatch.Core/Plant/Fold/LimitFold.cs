using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A good reading against the stops that always hold and the limits of its pool.</summary>
internal static class LimitFold
{
    public static void Look(Draft draft, int index, ProbePlan plan, Instant at, double raw, double value)
    {
        if (Stops.TryOf(plan.Measurand, out var stop, out var rule)) LookAtStop(draft, index, plan, at, raw, value, stop, rule);
        if (draft.Index.Limits[index] is not { } limit) return;
        if (limit.Low is { } low) LookAt(draft, RuleBook.BelowLimit, draft.Index.LowKeys[index], plan, at, value, low, isLow: true);
        if (limit.High is { } high) LookAt(draft, RuleBook.AboveLimit, draft.Index.HighKeys[index], plan, at, value, high, isLow: false);
    }

    // Doubt never makes safe: the raw number is looked at beside the corrected one, so that no calibration can hide an extreme.
    private static void LookAtStop(Draft draft, int index, ProbePlan plan, Instant at, double raw, double value, ValueRange stop, Rule rule)
    {
        var key = draft.Index.StopKeys[index];
        var band = draft.Alarms.IsActive(key) ? Deadband.Of(plan.Measurand) : 0;
        var holds = Outside(raw, stop, band) || Outside(value, stop, band);
        if (holds || draft.Alarms.Knows(key)) TellStop(draft, rule, key, plan, holds, at, Outside(value, stop, band) ? value : raw, stop, band);
    }

    // Apart, as below: what a cause is made of is only put together when somebody asks, and nearly no reading does.
    private static void TellStop(Draft draft, Rule rule, string key, ProbePlan plan, bool holds, Instant at, double shown, ValueRange stop, double band) =>
        draft.Alarms.Look(rule, key, plan.Id, holds, at, () => Reason.Of(
            shown < stop.Low + band ? "limit.below_stop" : "limit.above_stop", plan.Name, shown, shown < stop.Low + band ? stop.Low : stop.High, plan.Measurand.Unit()));

    private static bool Outside(double value, ValueRange stop, double band) => value < stop.Low + band || value > stop.High - band;

    private static void LookAt(Draft draft, Rule rule, string key, ProbePlan plan, Instant at, double value, double limit, bool isLow)
    {
        var band = draft.Alarms.IsActive(key) ? Deadband.Of(plan.Measurand) : 0;
        var holds = isLow ? value < limit + band : value > limit - band;
        if (holds || draft.Alarms.Knows(key)) Tell(draft, rule, key, plan, holds, at, value, limit, isLow);
    }

    private static void Tell(Draft draft, Rule rule, string key, ProbePlan plan, bool holds, Instant at, double value, double limit, bool isLow) =>
        draft.Alarms.Look(rule, key, plan.Id, holds, at, () => Reason.Of(isLow ? "limit.below" : "limit.above", plan.Name, value, limit, plan.Measurand.Unit()));
}
