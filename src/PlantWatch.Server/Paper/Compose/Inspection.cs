using PlantWatch.Core.Plans;
using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What an inspector asks for, in the order in which it is asked: what was tested and read, what was outside and how it ended, what was corrected, who was competent; what is worked out comes last.</summary>
internal static class Inspection
{
    private static readonly RecordGroup[] Running = [RecordGroup.Pools, RecordGroup.Filters, RecordGroup.Chemicals, RecordGroup.Limits, RecordGroup.Rounds, RecordGroup.Notes, RecordGroup.Handovers];

    /// <summary>Its sections.</summary>
    public static async Task<IReadOnlyList<Section>> SectionsAsync(SheetDraft draft, CancellationToken cancellation)
    {
        var (words, sections) = (draft.Words, new List<Section>());
        foreach (var (source, pool) in draft.Pools)
        {
            sections.Add(new(pool.Name, [new TestTable(source, pool, draft.Now, words).Make(), new DoseTable(source, pool, words).Make()]));
            sections.Add(new(words.Paper("limits"), [.. LimitTable.Of(source, pool, words)], 2));
        }

        foreach (var source in draft.Sources)
            sections.Add(new(words.Paper("of_circuit", source.Plan.Name), [new ExceptionRows(source, draft.Now, words).Make(), new AlarmTable(source, words).Make(), new LabTable(source, words).Make(), EventTable.Of(source, Running, "done_caption", "done_none", words)]));
        foreach (var (source, pool) in draft.Pools) sections.Add(await WorkedOutAsync(draft, source, pool, cancellation));
        return [.. sections, .. Ending.Sections(draft, words.Paper("sign_duty"))];
    }

    private static async Task<Section> WorkedOutAsync(SheetDraft draft, SheetSource source, PoolPlan pool, CancellationToken cancellation) => new(draft.Words.Paper("probes_of", pool.Name),
    [
        await new ProbeTable(source, pool, draft.Series, draft.Words).MakeAsync(new TestTable(source, pool, draft.Now, draft.Words).Missed, cancellation),
        await new RatingTable(draft, source).SideBySideAsync(pool, cancellation), await StripBlock.MakeAsync(source, pool, draft.Series, draft.Record, draft.Words, cancellation),
    ]);
}
