using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>A pool in a word, with the sentences behind it.</summary>
internal static class PoolViews
{
    public static PoolView Of(CircuitState state, PoolPlan plan, PoolState pool, ImmutableArray<DueCheck> allDue, Instant now, Wording words)
    {
        DueCheck[] due = [.. allDue.Where(d => d.PoolId == plan.Id)];
        AlarmRecord[] alarms = [.. state.Alarms.Values.Where(a => a is { Active: true, Suppressed: false } && AlarmViews.Concerns(state.Plan, a.Subject, plan.Id)).OrderByDescending(a => a.Priority)];
        var latched = state.Alarms.Values.Where(a => a is { Active: false, LatchHeld: true, Suppressed: false } && AlarmViews.Concerns(state.Plan, a.Subject, plan.Id));
        var why = alarms.Concat(latched).Select(a => new Said(a.Cause.Code, AlarmViews.Cause(state, a, words))).Concat(Doubted(state, plan, pool, words)).Concat(Unconfirmed(pool, words)).Concat(due.Select(d => words.Say(DueReason(d, words)))).ToList();
        return new PoolView(
            plan.Id, Word(state, plan, pool, alarms, due), why,
            [.. pool.Manual.Values.Select(v => Manual(pool, v))], CombinedViews.Of(pool, plan, words), BalanceViews.Of(state, plan, pool, words),
            BalanceViews.HoclShare(state, plan, pool), [.. due.Select(d => new DueView(d.PoolId, d.What, d.DueAt, d.Overdue))], pool.BottomVisible, pool.Bathers,
            IncidentViews.Of(state, plan.Id, now, words), Limits(state, pool), Operation(pool.Operation));
    }

    private static PoolLimitsView Limits(CircuitState state, PoolState pool) => new(
        pool.Limits.Word, pool.Limits.Unconfirmed.Length, state.Plan.Pack?.Id,
        [.. Enum.GetValues<Measurand>().Select(m => (Measurand: m, Ends: pool.Limits.Ends(m))).Where(b => b.Ends is not (null, null)).Select(b => new LimitBand(b.Measurand, b.Ends.Low, b.Ends.High))]);

    /// <summary>How a pool is run, and who said so.</summary>
    public static OperationView Operation(PoolOperation operation) => new(operation.State, operation.Since.OrNull(), operation.By, operation.Why, operation.ForCause);

    private static PoolWord Word(CircuitState state, PoolPlan plan, PoolState pool, AlarmRecord[] alarms, DueCheck[] due)
    {
        if (alarms.Any(a => a.Priority == Priority.Critical)) return PoolWord.Stop;
        if (alarms.Any(a => a.Priority >= Priority.Medium)) return PoolWord.Alarm;
        if (alarms.Length > 0 || state.Alarms.Values.Any(a => a is { LatchHeld: true, Suppressed: false } && AlarmViews.Concerns(state.Plan, a.Subject, plan.Id))) return PoolWord.Attention;
        // Without limits in force nothing may be called normal.
        if (pool.Limits.Word is LimitsWord.None or LimitsWord.Unconfirmed || !AnyHeard(state, plan)) return PoolWord.Unknown;
        if (NeedsCare(state, plan) || !pool.Limits.Undecided.IsEmpty || !pool.Doubts.IsDefaultOrEmpty) return PoolWord.Attention;
        return due.Length > 0 ? PoolWord.Due : PoolWord.Normal;
    }

    private static bool AnyHeard(CircuitState state, PoolPlan plan) =>
        ProbesOf(state, plan).Any(p => p.Last.Quality != Quality.NotReceived);

    // A probe that was never heard, and is not yet overdue, must not pass for a good one.
    private static bool NeedsCare(CircuitState state, PoolPlan plan) =>
        ProbesOf(state, plan).Any(p => p.Last.Quality == Quality.NotReceived || Standings.Worse(p.Signal.Standing, p.Trust.Standing) > Standing.Good);

    private static IEnumerable<ProbeState> ProbesOf(CircuitState state, PoolPlan plan) =>
        state.Probes.Where((_, i) => state.Plan.Probes[i].PoolId is null || state.Plan.Probes[i].PoolId == plan.Id);

    private static Reason DueReason(DueCheck due, Wording words) => Reason.Of(
        due.Overdue ? "check.is_overdue" : "check.is_due", string.Join(", ", due.What.Select(m => words.Find($"name.{Wording.Key(m)}"))));

    // In doubt by itself, or because it stands alone against its probe.
    private static ManualView Manual(PoolState pool, ManualValue value) => new(
        value.Result.Measurand, value.Result.Value, MethodUncertainty.Of(value.Result).OrNull()?.U ?? 0, value.Result.Censoring, value.Result.Method,
        value.SampledAt, value.Suspect || IsDoubted(pool, value), value.CheckId);

    private static bool IsDoubted(PoolState pool, ManualValue value) =>
        !pool.Doubts.IsDefaultOrEmpty && pool.Doubts.Any(d => d.Measurand == value.Result.Measurand && d.SampledAt == value.SampledAt);

    private static IEnumerable<Said> Unconfirmed(PoolState pool, Wording words) =>
        pool.Limits.Word == LimitsWord.Unconfirmed ? [words.Say(Reason.Of("limits.unconfirmed", pool.Limits.Unconfirmed.Length))]
        : pool.Limits.Undecided.IsEmpty ? [] : [words.Say(Reason.Of("limits.undecided", pool.Limits.Undecided.Length))];

    private static IEnumerable<Said> Doubted(CircuitState state, PoolPlan plan, PoolState pool, Wording words)
    {
        if (pool.Doubts.IsDefaultOrEmpty) return [];
        var index = state.Plan.Pools.IndexOf(plan);
        // What is in doubt by itself has its alarm.
        return pool.Doubts.Where(d => !(pool.Manual.TryGetValue(d.Measurand, out var tested) && tested.Suspect)).Select(d => WantedTests.Of(state, index, d.Measurand)).OfType<WantedTest>().Select(w => words.Say(w.Why));
    }
}
