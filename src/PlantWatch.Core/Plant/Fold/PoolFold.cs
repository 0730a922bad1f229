using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What a check tells of the pool itself: newest values, duties done, stops and limits broken by a test.</summary>
internal static class PoolFold
{
    // A sample older than this says how the water was, not how it is: it is kept, and raises and clears no live alarm.
    private static readonly TimeSpan StillLive = TimeSpan.FromHours(12);

    public static void Learn(Draft draft, int index, ManualCheck check, Plausibility plausibility, IReadOnlyList<Judgement> judgements, Instant now)
    {
        var plan = draft.Plan.Pools[index];
        var pool = draft.Pools[index];
        var fresh = new List<ManualValue>();
        var manual = pool.Manual;
        foreach (var result in check.Results)
        {
            var value = new ManualValue(result, check.SampledAt, plausibility.IsSuspect(result.Measurand), check.Id);
            if (manual.TryGetValue(result.Measurand, out var known) && known.SampledAt > check.SampledAt) continue;
            manual = manual.SetItem(result.Measurand, value);
            fresh.Add(value);
        }

        draft.Pools[index] = Look(pool with { Manual = manual, DutyDoneAt = DueChecks.DoneAfter(plan, pool, check) }, check);
        if (now - check.SampledAt > StillLive) return;
        foreach (var value in fresh) Judge(draft, plan, value, DoubtFold.IsDoubted(judgements, value.Result.Measurand), now);
        JudgeCombined(draft, plan, check, fresh, judgements, now);
        if (check.BottomVisible is { } visible && draft.Pools[index].BottomSeenAt == check.SampledAt)
            draft.Alarms.Look(RuleBook.StopBottom, RuleBook.StopBottom.KeyFor(plan.Id), plan.Id, !visible, now, () => Reason.Of("bottom.not_visible", plan.Name));
    }

    /// <summary>What a corrected check said is taken back, also what its correction leaves out or says of another pool.</summary>
    public static void Withdraw(Draft draft, Guid check)
    {
        for (var i = 0; i < draft.Pools.Length; i++)
        {
            Measurand[] wrong = [.. draft.Pools[i].Manual.Where(m => m.Value.CheckId == check).Select(m => m.Key)];
            if (wrong.Length > 0) draft.Pools[i] = draft.Pools[i] with { Manual = draft.Pools[i].Manual.RemoveRange(wrong) };
        }
    }

    private static PoolState Look(PoolState pool, ManualCheck check)
    {
        if (check.SampledAt < pool.BottomSeenAt) return pool;
        return pool with
        {
            BottomVisible = check.BottomVisible ?? pool.BottomVisible,
            BottomSeenAt = check.BottomVisible is null ? pool.BottomSeenAt : check.SampledAt,
            Bathers = check.Bathers ?? pool.Bathers,
        };
    }

    // A doubted test may raise an alarm and may not clear one: the unsafe reading stands until a repeat clears it. Doubted is also what stands alone against a probe.
    private static void Judge(Draft draft, PoolPlan plan, ManualValue value, bool isContradicted, Instant now)
    {
        var subject = $"{plan.Id}/{value.Result.Measurand.Key()}";
        Look(draft, RuleBook.RepeatTest, subject, value.Suspect, mayClear: !value.Suspect, now, () => Reason.Of("test.repeat", plan.Name, value.Result.Measurand.Key()));
        var (result, isDoubted) = (value.Result, value.Suspect || isContradicted);
        if (Stops.TryOf(result.Measurand, out var stop, out _))
            Look(draft, RuleBook.TestOutsideStop, subject, IsOutside(result, stop.Low, stop.High), !isDoubted && IsInside(result, stop.Low, stop.High), now,
                () => Reason.Of(IsBelow(result, stop.Low) ? "test.below_stop" : "test.above_stop", plan.Name, result.Measurand.Key(), result.Value, IsBelow(result, stop.Low) ? stop.Low : stop.High, result.Measurand.Unit()));
        if (plan.Limits.FirstOrDefault(l => l.Measurand == result.Measurand) is { } limit)
            Look(draft, RuleBook.TestOutsideLimit, subject, IsOutside(result, limit.Low, limit.High), !isDoubted && IsInside(result, limit.Low, limit.High), now, () => Outside(plan, limit, result.Value, limit.Low is { } end && IsBelow(result, end)));
    }

    // Of the newest pair only, and a doubted one may not clear it either.
    private static void JudgeCombined(Draft draft, PoolPlan plan, ManualCheck check, List<ManualValue> fresh, IReadOnlyList<Judgement> judgements, Instant now)
    {
        // Combined bromine disinfects as free bromine does: there is nothing to judge.
        if (plan.Disinfectant == Disinfectant.Bromine || plan.Limits.FirstOrDefault(l => l.Measurand == Measurand.CombinedChlorine) is not { } limit) return;
        var pair = fresh.Where(v => v.Result.Measurand is Measurand.FreeChlorine or Measurand.TotalChlorine).ToArray();
        if (pair.Length < 2 || !CombinedOfCheck.TryOf(check, out var combined) || !combined.IsKnown) return;
        var value = combined.Value.MilligramsPerLitre;
        Look(draft, RuleBook.TestOutsideLimit, $"{plan.Id}/{Measurand.CombinedChlorine.Key()}", value > limit.High || value < limit.Low, !pair.Any(v => v.Suspect || DoubtFold.IsDoubted(judgements, v.Result.Measurand)), now, () => Outside(plan, limit, value, value < limit.Low));
    }

    private static void Look(Draft draft, Rule rule, string subject, bool holds, bool mayClear, Instant now, Func<Reason> cause)
    {
        if (holds || mayClear) draft.Alarms.Look(rule, rule.KeyFor(subject), subject, holds, now, cause, renew: true);
    }

    private static bool IsBelow(TestResult result, double low) => result.Censoring == Censoring.Below ? result.Value <= low : result.Value < low;

    private static bool IsOutside(TestResult result, double? low, double? high) => result.Censoring switch
    {
        Censoring.Below => result.Value <= low,
        Censoring.Above => result.Value >= high,
        _ => result.Value < low || result.Value > high,
    };

    // Not the opposite of outside: of "below 1" nobody knows whether it is above a low limit of 0.5, so it proves nothing.
    private static bool IsInside(TestResult result, double? low, double? high) => result.Censoring switch
    {
        Censoring.Below => low is null && !(result.Value > high),
        Censoring.Above => high is null && !(result.Value < low),
        _ => !IsOutside(result, low, high),
    };

    private static Reason Outside(PoolPlan plan, LimitPlan limit, double value, bool below) =>
        Reason.Of(below ? "test.below_limit" : "test.above_limit", plan.Name, limit.Measurand.Key(), value, (below ? limit.Low : limit.High) ?? 0, limit.Measurand.Unit());
}
