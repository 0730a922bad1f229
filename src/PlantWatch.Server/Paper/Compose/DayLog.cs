using PlantWatch.Core.Plans;
using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The day log sheet: what was tested, read, given, done and seen, by whom, in the order of time.</summary>
internal static class DayLog
{
    // Tests, doses and exceptions have tables of their own; all else that people and plant write is told, whatever comes to it.
    private static readonly RecordGroup[] Done = [.. Enum.GetValues<RecordGroup>().Except([RecordGroup.All, RecordGroup.Tests, RecordGroup.Doses, RecordGroup.Exceptions])];

    /// <summary>Its sections.</summary>
    public static async Task<IReadOnlyList<Section>> SectionsAsync(SheetDraft draft, CancellationToken cancellation)
    {
        var sections = new List<Section>();
        foreach (var (source, pool) in draft.Pools) sections.AddRange(await OfPoolAsync(draft, source, pool, cancellation));
        foreach (var source in draft.Sources) sections.Add(OfCircuit(draft, source));
        sections.AddRange(Ending.Sections(draft, draft.Words.Paper("sign_tests"), draft.Words.Paper("sign_duty")));
        return sections;
    }

    private static async Task<IEnumerable<Section>> OfPoolAsync(SheetDraft draft, SheetSource source, PoolPlan pool, CancellationToken cancellation)
    {
        var (words, tests) = (draft.Words, new TestTable(source, pool, draft.Now, draft.Words));
        return
        [
            new(pool.Name, [tests.Make()]),
            new(words.Paper("limits"), [.. LimitTable.Of(source, pool, words)], 2),
            new(words.Paper("probes"), [await new ProbeTable(source, pool, draft.Series, words).MakeAsync(tests.Missed, cancellation), await StripBlock.MakeAsync(source, pool, draft.Series, draft.Record, words, cancellation)], 2),
            new(words.Paper("doses"), [new DoseTable(source, pool, words).Make()], 2),
        ];
    }

    private static Section OfCircuit(SheetDraft draft, SheetSource source) => new(draft.Words.Paper("of_circuit", source.Plan.Name),
    [
        new ExceptionRows(source, draft.Now, draft.Words).Make(), new AlarmTable(source, draft.Words).Make(),
        EventTable.Of(source, Done, "done_caption", "done_none", draft.Words), new LabTable(source, draft.Words).Make(),
    ]);
}
