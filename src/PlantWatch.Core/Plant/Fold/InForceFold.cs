using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Keeps each pool's limits as they hold now: they change with the plan, with a confirmation, and with the water that their conditions ask about.</summary>
internal static class InForceFold
{
    // As with all tests: what is older says how the water was. Cyanurate only goes with the water, and is tested once a month (common practice).
    private static readonly TimeSpan StillLive = TimeSpan.FromHours(12);
    private static readonly TimeSpan CyanurateLasts = TimeSpan.FromDays(45);

    public static void All(Draft draft, Instant at)
    {
        for (var i = 0; i < draft.Pools.Length; i++) One(draft, i, at);
    }

    /// <summary>Time went on: only a pack whose conditions ask about the water can change by itself.</summary>
    public static void Tick(Draft draft, Instant now)
    {
        if (draft.Index.PackAsksWater) All(draft, now);
    }

    public static void One(Draft draft, int pool, Instant at)
    {
        var (plan, state) = (draft.Plan.Pools[pool], draft.Pools[pool]);
        var water = Water(draft, plan, state, at);
        var limits = LimitsMaker.Of(draft.Plan, plan, draft.Confirmations, water);
        if (limits.Equals(state.Limits)) return;
        draft.Pools[pool] = state with { Limits = limits, Water = water };
        foreach (var alarm in draft.Alarms.All.Where(a => !IsWatched(draft, a)).ToArray()) draft.Alarms.Retire(alarm.Key, at);
        if (HasIndex(limits) || HasIndex(state.Limits)) BalanceFold.Look(draft, pool, at);
    }

    private static bool HasIndex(LimitsInForce limits)
    {
        foreach (var bound in limits.Bounds)
            if (bound.Quantity == PackQuantity.SaturationIndex) return true;
        return false;
    }

    /// <summary>An alarm on a limit that is there no more would stand for ever: nothing will look at it again.</summary>
    private static bool IsWatched(Draft draft, AlarmRecord alarm)
    {
        if (alarm.Rule == RuleBook.BelowLimit.Number) return Bound(draft, alarm, RowGrade.Operating)?.Low is not null;
        if (alarm.Rule == RuleBook.AboveLimit.Number) return Bound(draft, alarm, RowGrade.Operating)?.High is not null;
        if (alarm.Rule == RuleBook.TestOutsideLimit.Number || alarm.Rule == RuleBook.CombinedPart.Number) return Bound(draft, alarm, RowGrade.Operating) is not null;
        if (alarm.Rule == RuleBook.HeadsForLimit.Number) return Bound(draft, alarm, RowGrade.Operating) is not null || Bound(draft, alarm, RowGrade.Closure) is not null;
        return (alarm.Rule != RuleBook.OutsideClosure.Number && alarm.Rule != RuleBook.TestOutsideClosure.Number) || Bound(draft, alarm, RowGrade.Closure) is not null;
    }

    private static LimitBound? Bound(Draft draft, AlarmRecord alarm, RowGrade grade)
    {
        var (head, tail) = alarm.Subject.Split('/') is [var a, var b] ? (a, b) : (alarm.Subject, "");
        var probe = draft.Index.Probe(head);
        var pool = draft.Index.Pool(probe < 0 ? head : draft.Plan.Probes[probe].PoolId);
        if (pool < 0) return null;
        foreach (var bound in draft.Pools[pool].Limits.Bounds)
            if (bound.Grade == grade && (probe < 0 ? bound.Quantity.Key() == tail : bound.Quantity == draft.Plan.Probes[probe].Measurand.Limiting())) return bound;
        return null;
    }

    private static WaterFacts Water(Draft draft, PoolPlan plan, PoolState pool, Instant now) => new(
        Now<Ph>(draft, plan, pool, Measurand.Ph, now),
        Tested(pool, Measurand.CyanuricAcid, now, CyanurateLasts) is { } level && Quantity.TryFrom(level, out CyanuricAcid cyanurate) ? cyanurate : null,
        Now<Celsius>(draft, plan, pool, Measurand.Temperature, now));

    // A trusted probe first, else a live test.
    private static T? Now<T>(Draft draft, PoolPlan plan, PoolState pool, Measurand measurand, Instant now) where T : struct, IQuantity<T>
    {
        for (var i = 0; i < draft.Probes.Length; i++)
        {
            if (draft.Plan.Probes[i].Measurand != measurand || draft.Plan.Probes[i].PoolId != plan.Id) continue;
            var probe = draft.Probes[i];
            if (probe is { Trust.Standing: Standing.Good, Signal.Standing: Standing.Good } && probe.Last.Quality.IsGood() && Quantity.TryFrom(probe.Last.Value, out T value)) return value;
        }

        return Tested(pool, measurand, now, StillLive) is { } tested && Quantity.TryFrom(tested, out T by) ? by : null;
    }

    private static double? Tested(PoolState pool, Measurand measurand, Instant now, TimeSpan lasts) =>
        pool.Manual.TryGetValue(measurand, out var test) && !test.Suspect && test.Result.Censoring == Censoring.None && now - test.SampledAt <= lasts ? test.Result.Value : null;
}
