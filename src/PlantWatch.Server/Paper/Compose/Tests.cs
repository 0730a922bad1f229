using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>A test as it stands, with those that it took the place of.</summary>
/// <param name="Entry">As it stands.</param>
/// <param name="Before">What it corrects, newest first.</param>
internal sealed record StandingTest(CheckEntry Entry, IReadOnlyList<CheckEntry> Before)
{
    /// <summary>The test.</summary>
    public ManualCheck Check => Entry.Check;
}

/// <summary>The tests by hand of a source, with corrections followed.</summary>
internal static class Tests
{
    /// <summary>The tests of a pool that stand, by sample time; those in the span, or all that were read.</summary>
    public static IReadOnlyList<StandingTest> Of(SheetSource source, string pool, bool inSpan = true)
    {
        CheckEntry[] all = [.. source.Wide.Select(r => r.Body).OfType<CheckEntry>()];
        var byId = all.DistinctBy(e => e.Check.Id).ToDictionary(e => e.Check.Id);
        var corrected = all.Select(e => e.Check.Corrects).OfType<Guid>().ToHashSet();
        return [.. all.Where(e => e.Check.PoolId == pool && !corrected.Contains(e.Check.Id) && (!inSpan || source.Span.Holds(e.Check.SampledAt)))
            .Select(e => new StandingTest(e, Before(e, byId))).OrderBy(t => t.Check.SampledAt).ThenBy(t => t.Check.Id)];
    }

    /// <summary>Every correction of a test that touches the span and a pool of the source: the new one, and the old one where it was found.</summary>
    public static IEnumerable<(CheckEntry Now, CheckEntry? Was)> Corrections(SheetSource source)
    {
        CheckEntry[] all = [.. source.Wide.Select(r => r.Body).OfType<CheckEntry>()];
        var byId = all.DistinctBy(e => e.Check.Id).ToDictionary(e => e.Check.Id);
        foreach (var now in all.Where(e => e.Check.Corrects is not null))
        {
            var was = byId.GetValueOrDefault(now.Check.Corrects!.Value);
            if (Touches(source, now) || (was is not null && Touches(source, was))) yield return (now, was);
        }
    }

    private static bool Touches(SheetSource source, CheckEntry entry) =>
        source.Span.Holds(entry.Check.SampledAt) && source.Pools.Any(p => p.Id == entry.Check.PoolId);

    private static List<CheckEntry> Before(CheckEntry entry, Dictionary<Guid, CheckEntry> byId)
    {
        var before = new List<CheckEntry>();
        for (var id = entry.Check.Corrects; id is { } wrong && byId.GetValueOrDefault(wrong) is { } was && !before.Contains(was); id = was.Check.Corrects) before.Add(was);
        return before;
    }
}
