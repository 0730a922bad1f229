using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Fault notes by maintenance.</summary>
internal static class FaultApi
{
    public static void MapFaults(this RouteGroupBuilder api)
    {
        api.MapPut("/faults/{id:guid}", PutAsync).Produces<FaultNote>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapGet("/faults", ListAsync).Produces<IReadOnlyList<FaultNote>>();
    }

    private static async Task<IResult> PutAsync(Guid id, FaultRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("seen", request.Seen) ?? Bounds.OfRemark("done", request.Done)) is { } tooLong) return tooLong;
        if (host.WithAsset(request.Asset) is not { } worker) return Answers.Invalid("asset", "asset.not_known");
        var note = new FaultNote(id, request.Asset!, request.Seen ?? "", request.Done, request.State, request.AlarmId, request.By.Trim(), Instant.Never);
        if (await NewestAsync(store, worker.Partition, note, cancellation) is { } known && known with { At = note.At } == note) return Answers.Ok(known);
        FaultNote? kept = null;
        var outcome = await host.SendAsync(worker.Partition.Value, at => new FaultNoted(at, kept = note with { At = at }), cancellation);
        return outcome is Outcome.TurnedDown no ? Answers.From(no) : Answers.Ok(kept);
    }

    // The state forgets a note once it is done, and a phone that lost the answer sends it again: it is not written twice.
    private static async Task<FaultNote?> NewestAsync(IRecordStore store, PartitionKey partition, FaultNote note, CancellationToken cancellation)
    {
        var rows = await store.EntriesAsync(partition, new EntryQuery(["fault"], note.Asset, Limit: 200), cancellation);
        return rows.Select(r => r.Body).OfType<FaultEntry>().Select(f => f.Note).FirstOrDefault(n => n.Id == note.Id);
    }

    private static async Task<IResult> ListAsync(string? asset, int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var notes = new List<FaultNote>();
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["fault"], asset, Limit: Math.Clamp(limit ?? 200, 1, 2000)), cancellation))
                if (row.Body is FaultEntry entry) notes.Add(entry.Note);
        return Answers.Ok(notes.OrderByDescending(n => n.At).ToArray());
    }
}
