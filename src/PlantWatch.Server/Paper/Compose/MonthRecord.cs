using PlantWatch.Core.Plans;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The month record: a line a day for each pool, what went wrong and how it ended, the laboratory, and how much of it the probes were there.</summary>
internal static class MonthRecord
{
    /// <summary>Its sections.</summary>
    public static async Task<IReadOnlyList<Section>> SectionsAsync(SheetDraft draft, CancellationToken cancellation)
    {
        var (words, sections) = (draft.Words, new List<Section>());
        foreach (var (source, pool) in draft.Pools) sections.AddRange(await OfPoolAsync(draft, source, pool, cancellation));
        foreach (var source in draft.Sources)
            sections.Add(new(words.Paper("of_circuit", source.Plan.Name), [new ExceptionRows(source, draft.Now, words).Make(), new LabTable(source, words).Make(), new AlarmCounts(source, words).Make()]));
        sections.AddRange(Ending.Sections(draft, words.Paper("sign_month"), words.Paper("sign_duty")));
        return sections;
    }

    private static async Task<IEnumerable<Section>> OfPoolAsync(SheetDraft draft, SheetSource source, PoolPlan pool, CancellationToken cancellation)
    {
        var (words, month) = (draft.Words, new MonthTable(draft, source, pool));
        return
        [
            new(pool.Name, [month.Days(), new Remark(words.Paper("combined_says")), month.Others()]),
            new(words.Paper("limits"), [.. LimitTable.Of(source, pool, words)], 2),
            new(words.Paper("availability"), [await new RatingTable(draft, source).SideBySideAsync(pool, cancellation), await StripBlock.MakeAsync(source, pool, draft.Series, draft.Record, words, cancellation)], 2),
        ];
    }
}
