using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Fold;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>The tests by hand that opening asks for: those of the pool's duties, and always the disinfectant and pH.</summary>
internal static class GateTests
{
    /// <summary>For so long a test speaks for the water as it is (common practice: tested before the first bathers, and every two hours or so while they are in).</summary>
    public static TimeSpan Lasts { get; } = TimeSpan.FromHours(2);

    public static Measurand[] Of(PoolPlan plan) =>
        [.. plan.Duties.SelectMany(duty => duty.What).Concat([plan.Disinfectant == Disinfectant.Bromine ? Measurand.Bromine : Measurand.FreeChlorine, Measurand.Ph]).Distinct().Order()];

    public static GateLine Line(CircuitPlan plan, PoolState pool, Measurand measurand, Instant now)
    {
        var (word, reason) = measurand == Measurand.CombinedChlorine ? Combined(plan, pool, now) : Single(plan, pool, measurand, now);
        return new($"test.{measurand.Key()}", word, reason);
    }

    /// <summary>Whether what was sampled then still speaks: not too old, and not from before the pool was closed for cause or filled. Null when it does.</summary>
    public static string? Stale(PoolState pool, Instant sampledAt, Instant now) =>
        sampledAt <= pool.Operation.TestsFrom && pool.Operation.TestsFrom.IsSet ? "before_closing" : now - sampledAt > Lasts ? "too_old" : null;

    private static (GateWord, Reason) Single(CircuitPlan plan, PoolState pool, Measurand measurand, Instant now)
    {
        if (!pool.Manual.TryGetValue(measurand, out var test)) return (GateWord.NotKnown, Reason.Of("gate.test_missing", measurand.Key()));
        return Unfit(pool, measurand, test, now) ?? Against(plan, pool, measurand, test.Result);
    }

    // Combined chlorine is total less free, of one sample.
    private static (GateWord, Reason) Combined(CircuitPlan plan, PoolState pool, Instant now)
    {
        var key = Measurand.CombinedChlorine.Key();
        if (!pool.Manual.TryGetValue(Measurand.FreeChlorine, out var free) || !pool.Manual.TryGetValue(Measurand.TotalChlorine, out var total) || free.CheckId != total.CheckId)
            return (GateWord.NotKnown, Reason.Of("gate.test_missing", key));
        if ((Unfit(pool, Measurand.FreeChlorine, free, now) ?? Unfit(pool, Measurand.TotalChlorine, total, now)) is { } unfit) return unfit;
        if (free.Result.Censoring != Censoring.None || total.Result.Censoring != Censoring.None) return (GateWord.NotKnown, Reason.Of("gate.test_proves_nothing", key));
        return Against(plan, pool, Measurand.CombinedChlorine, total.Result with { Measurand = Measurand.CombinedChlorine, Value = Math.Max(0, total.Result.Value - free.Result.Value) });
    }

    private static (GateWord, Reason)? Unfit(PoolState pool, Measurand measurand, ManualValue test, Instant now)
    {
        if (Stale(pool, test.SampledAt, now) is { } stale) return (GateWord.NotKnown, stale == "too_old"
            ? Reason.Of("gate.test_too_old", measurand.Key(), (now - test.SampledAt).TotalMinutes) : Reason.Of("gate.test_before_closing", measurand.Key(), (now - test.SampledAt).TotalMinutes));
        var doubted = test.Suspect || (!pool.Doubts.IsDefaultOrEmpty && pool.Doubts.Any(d => d.Measurand == measurand));
        return doubted ? (GateWord.NotKnown, Reason.Of("gate.test_doubted", measurand.Key())) : null;
    }

    // Not outside is not yet inside: a bound of a test may prove neither.
    private static (GateWord, Reason) Against(CircuitPlan plan, PoolState pool, Measurand measurand, TestResult result)
    {
        var ends = Ends(plan, pool, measurand).ToArray();
        var outside = ends.FirstOrDefault(e => TestAgainst.IsOutside(result, e.Low, e.High));
        if (outside != default) return (GateWord.NotPassed, Outside(result, outside));
        return double.IsFinite(result.Value) && ends.All(e => TestAgainst.IsInside(result, e.Low, e.High))
            ? (GateWord.Passed, Reason.Of("gate.test_inside", measurand.Key(), result.Value, measurand.Unit()))
            : (GateWord.NotKnown, Reason.Of("gate.test_proves_nothing", measurand.Key()));
    }

    private static Reason Outside(TestResult result, (double? Low, double? High) ends)
    {
        var isLow = ends.Low is { } low && (result.Censoring == Censoring.Below ? result.Value <= low : result.Value < low);
        return Reason.Of(isLow ? "gate.test_low" : "gate.test_high", result.Measurand.Key(), result.Value, (isLow ? ends.Low : ends.High) ?? 0, result.Measurand.Unit());
    }

    private static List<(double? Low, double? High)> Ends(CircuitPlan plan, PoolState pool, Measurand measurand)
    {
        List<(double?, double?)> ends = Stops.TryOf(plan, measurand, out var stop, out _) ? [(stop.Low, stop.High)] : [];
        foreach (var bound in pool.Limits.Bounds)
            if (bound.Quantity == measurand.Limiting()) ends.Add((bound.Low, bound.High));
        return ends;
    }
}
