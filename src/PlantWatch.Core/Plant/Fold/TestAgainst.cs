using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A manual test against a stop or a limit: whether it is outside, whether it proves to be inside, and how that is said.</summary>
internal static class TestAgainst
{
    public static bool IsOutside(TestResult result, double? low, double? high) => result.Censoring switch
    {
        Censoring.Below => result.Value <= low,
        Censoring.Above => result.Value >= high,
        _ => result.Value < low || result.Value > high,
    };

    // Not the opposite of outside: of "below 1" nobody knows whether it is above a low limit of 0.5, so it proves nothing.
    public static bool IsInside(TestResult result, double? low, double? high) => result.Censoring switch
    {
        Censoring.Below => low is null && !(result.Value > high),
        Censoring.Above => high is null && !(result.Value < low),
        _ => !IsOutside(result, low, high),
    };

    /// <summary>A result against everything that holds for it: the stop, and each limit in force.</summary>
    public static List<TestFinding> All(CircuitPlan circuit, PoolPlan plan, LimitsInForce limits, TestResult result)
    {
        var (subject, all) = ($"{plan.Id}/{result.Measurand.Key()}", new List<TestFinding>());
        if (Stops.TryOf(circuit, result.Measurand, out var stop, out _))
            all.Add(new(RuleBook.TestOutsideStop, subject, IsOutside(result, stop.Low, stop.High), IsInside(result, stop.Low, stop.High), () => Stop(plan, result, stop)));
        foreach (var bound in limits.Bounds.Where(b => b.Quantity == result.Measurand.Limiting()))
            all.Add(new(
                bound.Grade == RowGrade.Closure ? RuleBook.TestOutsideClosure : RuleBook.TestOutsideLimit, subject,
                IsOutside(result, bound.Low, bound.High), IsInside(result, bound.Low, bound.High), () => Limit(plan, result, bound)));
        return all;
    }

    public static Reason Stop(PoolPlan plan, TestResult result, ValueRange stop)
    {
        var below = IsBelow(result, stop.Low);
        return Reason.Of(below ? "test.below_stop" : "test.above_stop", plan.Name, result.Measurand.Key(), result.Value, below ? stop.Low : stop.High, result.Measurand.Unit());
    }

    public static Reason Limit(PoolPlan plan, TestResult result, LimitBound bound)
    {
        var below = bound.Low is { } low && IsBelow(result, low);
        return Limit(plan, result.Measurand, result.Value, bound, below, MethodUncertainty.Of(result));
    }

    /// <summary>Outside an operating limit by less than the test can tell is said so: it is at the limit. A closure limit is never softened.</summary>
    public static Reason Limit(PoolPlan plan, Measurand measurand, double value, LimitBound bound, bool below, Estimate tested)
    {
        var limit = (below ? bound.Low : bound.High) ?? 0;
        if (bound.Grade == RowGrade.Closure)
            return Reason.Of(below ? "test.below_closure" : "test.above_closure", plan.Name, measurand.Key(), value, limit, measurand.Unit(), below ? bound.LowFrom : bound.HighFrom);
        if (tested.IsKnown && Math.Abs(value - limit) <= tested.Expanded)
            return Reason.Of(below ? "test.at_low_limit" : "test.at_high_limit", plan.Name, measurand.Key(), value, limit, measurand.Unit(), tested.Expanded);
        return Reason.Of(below ? "test.below_limit" : "test.above_limit", plan.Name, measurand.Key(), value, limit, measurand.Unit());
    }

    private static bool IsBelow(TestResult result, double low) => result.Censoring == Censoring.Below ? result.Value <= low : result.Value < low;
}

/// <summary>What a test says of one rule.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Subject">Pool and quantity.</param>
/// <param name="Holds">It is outside.</param>
/// <param name="MayClear">It proves to be inside.</param>
/// <param name="Cause">How that is said.</param>
internal readonly record struct TestFinding(Rule Rule, string Subject, bool Holds, bool MayClear, Func<Reason> Cause);
