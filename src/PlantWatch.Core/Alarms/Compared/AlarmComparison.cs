using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Compared;

/// <summary>How many alarms of a rule there are on each side.</summary>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Priority">Its priority.</param>
/// <param name="Before">Of the first side.</param>
/// <param name="After">Of the second.</param>
/// <param name="Lost">Of the first and met by none of the second.</param>
/// <param name="Gained">Of the second and met by none of the first.</param>
/// <param name="StoodBefore">How long those of the first stood, added up.</param>
/// <param name="StoodAfter">How long those of the second did.</param>
public sealed record RuleCount(string Rule, Priority Priority, int Before, int After, int Lost, int Gained, TimeSpan StoodBefore, TimeSpan StoodAfter);

/// <summary>The alarms of one time as they come about on two sides, say under two sets of limits.</summary>
/// <remarks>
/// Alarms are the same when rule and subject are and their times overlap. One long alarm of the one side may be met by several short ones of the other: none of them is
/// lost or gained, since somebody was told of each of these times on both sides.
/// </remarks>
/// <param name="Lost">Of the first side and met by none of the second, by time.</param>
/// <param name="Gained">Of the second side and met by none of the first, by time.</param>
/// <param name="Rules">Counts by rule, in the order of their numbers.</param>
public sealed record AlarmComparison(ImmutableArray<AlarmEpisode> Lost, ImmutableArray<AlarmEpisode> Gained, ImmutableArray<RuleCount> Rules)
{
    /// <summary>Compares.</summary>
    /// <param name="before">The alarms of the first side.</param>
    /// <param name="after">Those of the second.</param>
    /// <param name="end">Until when those stand that have no end.</param>
    public static AlarmComparison Of(ImmutableArray<AlarmEpisode> before, ImmutableArray<AlarmEpisode> after, Instant end)
    {
        var (lost, gained) = (Unmet(before, after), Unmet(after, before));
        var rules = before.Concat(after).Select(e => (e.Rule, e.Priority)).Distinct().OrderBy(r => r.Rule, StringComparer.Ordinal)
            .Select(r => new RuleCount(r.Rule, r.Priority, Count(before, r.Rule), Count(after, r.Rule), Count(lost, r.Rule), Count(gained, r.Rule), Stood(before, r.Rule, end), Stood(after, r.Rule, end)));
        return new(lost, gained, [.. rules]);
    }

    private static int Count(ImmutableArray<AlarmEpisode> episodes, string rule) => episodes.Count(e => e.Rule == rule);

    private static TimeSpan Stood(ImmutableArray<AlarmEpisode> episodes, string rule, Instant end) =>
        episodes.Where(e => e.Rule == rule).Aggregate(TimeSpan.Zero, (sum, e) => sum + ((e.To.IsSet ? e.To : end) - e.From));

    private static ImmutableArray<AlarmEpisode> Unmet(ImmutableArray<AlarmEpisode> these, ImmutableArray<AlarmEpisode> those)
    {
        var byKey = those.ToLookup(e => e.Key, StringComparer.Ordinal);
        return [.. these.Where(e => !byKey[e.Key].Any(e.Meets)).OrderBy(e => e.From).ThenBy(e => e.Key, StringComparer.Ordinal)];
    }
}
