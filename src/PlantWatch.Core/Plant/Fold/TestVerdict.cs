using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What a check says of one quantity of its pool, over all rules.</summary>
/// <param name="Key">Pool and quantity.</param>
/// <param name="Word">Inside, at the limit, outside, or nothing proven.</param>
/// <param name="Grade">The gravest that it breaks; unknown when it breaks none.</param>
/// <param name="Rule">The rule of it; empty when it breaks none.</param>
/// <param name="Cause">What was read against what; null when it breaks none.</param>
internal sealed record TestVerdict(string Key, RetestWord Word, BreachGrade Grade, string Rule, Reason? Cause)
{
    public bool IsBreach => Cause is not null;

    /// <summary>The verdicts of a check, in the order of its results. Nothing is said of water that is no longer there.</summary>
    /// <param name="draft">The circuit, after the check was learned from.</param>
    /// <param name="entry">The check as it stands in the record.</param>
    /// <param name="isDoubted">It is in doubt beside a probe.</param>
    public static TestVerdict[] Of(Draft draft, CheckEntry entry, bool isDoubted)
    {
        var pool = draft.Index.Pool(entry.Check.PoolId);
        if (pool < 0 || entry.Check.SampledAt < draft.Pools[pool].FilledAt) return [];
        var findings = draft.Findings.Concat(NotHeld(draft, pool, entry, isDoubted)).Concat(Bottom(draft, pool, entry.Check));
        return [.. findings.Where(f => BreachRules.GradeOf(f.Rule.Number) != BreachGrade.Unknown).GroupBy(f => f.Subject).Select(g => Of(g.Key, [.. g]))];
    }

    /// <summary>One quantity out of what all rules say of it.</summary>
    public static TestVerdict Of(string key, IReadOnlyList<TestFinding> findings)
    {
        var worst = findings.Where(f => f.Holds).OrderByDescending(f => BreachRules.GradeOf(f.Rule.Number)).FirstOrDefault();
        if (worst.Rule is null) return new(key, findings.All(f => f.MayClear) ? RetestWord.Inside : RetestWord.NotProven, BreachGrade.Unknown, "", null);
        var cause = worst.Cause();
        return new(key, cause.Code is "test.at_low_limit" or "test.at_high_limit" ? RetestWord.AtLimit : RetestWord.Outside, BreachRules.GradeOf(worst.Rule.Number), worst.Rule.Number, cause);
    }

    // A test that came late, or after a newer one, raises no alarm. What it says of limits is a breach of that hour all the same.
    private static IEnumerable<TestFinding> NotHeld(Draft draft, int pool, CheckEntry entry, bool isDoubted) => entry.Check.Results
        .Where(result => !draft.Findings.Exists(f => f.Subject == $"{entry.Check.PoolId}/{result.Measurand.Key()}"))
        .SelectMany(result => TestAgainst.All(draft.Plan, draft.Plan.Pools[pool], draft.Pools[pool].Limits, result))
        .Select(finding => finding with { MayClear = finding.MayClear && !isDoubted && entry.Remarks.IsEmpty });

    private static TestFinding[] Bottom(Draft draft, int pool, ManualCheck check) => check.BottomVisible is { } visible
        ? [new(RuleBook.StopBottom, $"{check.PoolId}/{BreachKeys.Bottom}", !visible, visible, () => Reason.Of("bottom.not_visible", draft.Plan.Pools[pool].Name))] : [];
}
