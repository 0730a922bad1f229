using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

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
        // What the test says of the water may be what a condition asks for: the limits that hold are those of this water.
        InForceFold.One(draft, index, now);
        if (now - check.SampledAt > StillLive) return;
        foreach (var value in fresh) Judge(draft, index, value, DoubtFold.IsDoubted(judgements, value.Result.Measurand), now);
        RatioFold.Judge(draft, index, check, fresh, judgements, now);
        if (check.BottomVisible is { } visible && draft.Pools[index].BottomSeenAt == check.SampledAt)
            draft.Alarms.Look(RuleBook.StopBottom, RuleBook.StopBottom.KeyFor(plan.Id), plan.Id, !visible, now, () => Reason.Of("bottom.not_visible", plan.Name));
    }

    /// <summary>Limits came into force: the newest tests, as long as they say how the water is, are held against them. They may raise and clear nothing.</summary>
    public static void AgainstNewLimits(Draft draft, Instant now)
    {
        foreach (var (plan, pool) in draft.Plan.Pools.Zip(draft.Pools))
            foreach (var value in pool.Manual.Values.Where(v => now - v.SampledAt <= StillLive))
                foreach (var finding in TestAgainst.All(draft.Plan, plan, pool.Limits, value.Result).Where(f => f.Rule != RuleBook.TestOutsideStop))
                    Look(draft, finding.Rule, finding.Subject, finding.Holds, mayClear: false, now, finding.Cause);
    }

    /// <summary>The plant edited a stop: the newest tests are held against what holds now, and clear nothing.</summary>
    public static void AgainstNewStops(Draft draft, Instant now)
    {
        foreach (var (plan, pool) in draft.Plan.Pools.Zip(draft.Pools))
            foreach (var value in pool.Manual.Values.Where(v => now - v.SampledAt <= StillLive))
                foreach (var finding in TestAgainst.All(draft.Plan, plan, pool.Limits, value.Result).Where(f => f.Rule == RuleBook.TestOutsideStop))
                    Look(draft, finding.Rule, finding.Subject, finding.Holds, mayClear: false, now, finding.Cause);
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
    private static void Judge(Draft draft, int index, ManualValue value, bool isContradicted, Instant now)
    {
        var plan = draft.Plan.Pools[index];
        var subject = $"{plan.Id}/{value.Result.Measurand.Key()}";
        Look(draft, RuleBook.RepeatTest, subject, value.Suspect, mayClear: !value.Suspect, now, () => Reason.Of("test.repeat", plan.Name, value.Result.Measurand.Key()));
        var isDoubted = value.Suspect || isContradicted;
        foreach (var finding in TestAgainst.All(draft.Plan, plan, draft.Pools[index].Limits, value.Result))
            Look(draft, finding.Rule, subject, finding.Holds, !isDoubted && finding.MayClear, now, finding.Cause);
    }

    internal static void Look(Draft draft, Rule rule, string subject, bool holds, bool mayClear, Instant now, Func<Reason> cause)
    {
        draft.Findings.Add(new(rule, subject, holds, mayClear, cause));
        if (holds || mayClear) draft.Alarms.Look(rule, rule.KeyFor(subject), subject, holds, now, cause, renew: true);
    }
}
