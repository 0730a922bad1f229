using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The record in words: what was done, by whom and when.</summary>
internal static class EntryApi
{
    private const int Told = 500;

    public static void MapEntries(this RouteGroupBuilder api) =>
        api.MapGet("/entries", ListAsync).Produces<EntriesView>().Produces<Problem>(StatusCodes.Status400BadRequest);

    private static async Task<IResult> ListAsync(string? from, string? to, string? about, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (Times.Open(from, to, out var start, out var end) is { } no) return no;
        if (Group(about) is not { } group) return Answers.Invalid("about", "field.not_readable");
        var rows = new List<(CircuitPlan Plan, RecordEntry Row)>();
        foreach (var worker in host.Circuits.ToArray())
            rows.AddRange((await store.EntriesAsync(worker.Partition, new EntryQuery(EntryViews.Kinds(group), From: start, To: end, Limit: Told + 1), cancellation)).Select(row => (worker.State.Plan, row)));
        // A lot of the kit that all circuits share stands in the record of each, and so does a handover.
        var told = rows.DistinctBy(r => r.Row.Body switch { ReagentEntry lot => $"{lot.Lot.Id}", InstrumentEntry said => $"{said.Verification.Id}", HandoverEntry h => $"{h.HandoverId} {h.Change}", _ => $"{r.Row.Id}" }).OrderByDescending(r => r.Row.HappenedAt).ThenByDescending(r => r.Row.At).ToArray();
        return Answers.Ok(new EntriesView([.. told.Take(Told).Select(r => EntryViews.Of(r.Plan, r.Row, Reader.Words)).OfType<EntryView>()], told.Length > Told));
    }

    private static RecordGroup? Group(string? word)
    {
        if (string.IsNullOrEmpty(word)) return RecordGroup.All;
        foreach (var group in Enum.GetValues<RecordGroup>())
            if (Wording.Key(group) == word) return group;
        return null;
    }
}
