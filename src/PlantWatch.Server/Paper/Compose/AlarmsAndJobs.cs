using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Alarms, exceptions and the work on the plant.</summary>
internal static class AlarmsAndJobs
{
    private static readonly RecordGroup[] Work = [RecordGroup.Filters, RecordGroup.Probes, RecordGroup.Reagents, RecordGroup.Chemicals, RecordGroup.Rounds, RecordGroup.Notes, RecordGroup.Handovers];

    /// <summary>Its sections.</summary>
    public static IReadOnlyList<Section> Sections(SheetDraft draft) =>
        [.. draft.Sources.SelectMany(s => OfCircuit(draft, s)), .. Ending.Sections(draft, draft.Words.Paper("sign_maintenance"), draft.Words.Paper("sign_duty"))];

    private static IEnumerable<Section> OfCircuit(SheetDraft draft, SheetSource source)
    {
        var (words, jobs) = (draft.Words, new JobTable(source, draft.Now, draft.Words));
        yield return new(words.Paper("alarms_of", source.Plan.Name), [new AlarmCounts(source, words).Make(), new AlarmTable(source, words).Make(), new ExceptionRows(source, draft.Now, words).Make()]);
        yield return new(words.Paper("maintenance_of", source.Plan.Name), [jobs.Jobs(), jobs.Tasks(), EventTable.Of(source, Work, "done_caption", "done_none", words)]);
    }
}
