using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Rules;

/// <summary>Until when a test by hand has to settle a doubt. Doubt never makes safe: it sets a clock. The times are common practice.</summary>
public static class TestDeadlines
{
    /// <summary>To repeat a doubted test: within the hour, as R-014 says.</summary>
    public static TimeSpan Repeat { get; } = TimeSpan.FromMinutes(60);

    /// <summary>To repeat a doubted test that, if right, would close the pool.</summary>
    public static TimeSpan RepeatAtStop { get; } = TimeSpan.FromMinutes(15);

    /// <summary>Between tests by hand while no probe watches a value.</summary>
    public static TimeSpan WhileBlind { get; } = TimeSpan.FromHours(4);

    /// <summary>What a doubt of a test closes: its sort decides how soon.</summary>
    public static Instant For(CircuitPlan plan, TestResult result, Instant arrived) => arrived + (MayClose(plan, result) ? RepeatAtStop : Repeat);

    /// <summary>The doubts of a pool after a check.</summary>
    /// <param name="plan">The circuit, whose stops say what would close the pool.</param>
    /// <param name="before">Before.</param>
    /// <param name="check">The check.</param>
    /// <param name="doubted">Which of its results are doubted, by themselves or beside their probes.</param>
    /// <param name="arrived">When it arrived.</param>
    public static ImmutableArray<TestDoubt> After(CircuitPlan plan, ImmutableArray<TestDoubt> before, ManualCheck check, Func<Measurand, bool> doubted, Instant arrived)
    {
        var after = before.IsDefault ? [] : before;
        foreach (var result in check.Results) after = After(plan, after, check, result, doubted(result.Measurand), arrived);
        return after;
    }

    private static ImmutableArray<TestDoubt> After(CircuitPlan plan, ImmutableArray<TestDoubt> all, ManualCheck check, TestResult result, bool doubted, Instant arrived)
    {
        var at = IndexOf(all, result.Measurand);
        if (at >= 0 && check.SampledAt < all[at].SampledAt) return all;
        if (!doubted) return at >= 0 && (check.SampledAt > all[at].SampledAt || check.Corrects is not null) ? all.RemoveAt(at) : all;
        var by = For(plan, result, arrived);
        return at < 0 ? all.Add(new(result.Measurand, check.SampledAt, by)) : all.SetItem(at, new(result.Measurand, check.SampledAt, Instant.Earlier(all[at].By, by)));
    }

    private static bool MayClose(CircuitPlan plan, TestResult result) => Stops.TryOf(plan, result.Measurand, out var stop, out _) && !stop.Contains(result.Value);

    private static int IndexOf(ImmutableArray<TestDoubt> all, Measurand measurand)
    {
        for (var i = 0; i < all.Length; i++)
            if (all[i].Measurand == measurand) return i;
        return -1;
    }
}
