using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What happened in a time, for the marks over the strips of a pool.</summary>
internal static class MarkApi
{
    // Rows that are looked at, of all pools of the circuit; and marks that a page can still tell apart.
    private const int Looked = 6000, Told = 1000;

    public static void MapMarks(this RouteGroupBuilder api) =>
        api.MapGet("/pools/{id}/marks", async (string id, string from, string to, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        {
            if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(MarkViews.Kinds, null, start, end, Looked), cancellation);
            var marks = MarkViews.Of(worker.State.Plan, id, rows, Reader.Words);
            return Answers.Ok(new MarksView([.. marks.Skip(Math.Max(0, marks.Count - Told))], rows.Count == Looked || marks.Count > Told));
        }).Produces<MarksView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
}
