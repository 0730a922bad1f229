using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Notes about a span of time: written once however often they are sent, corrected and taken back by another one.</summary>
internal static class NoteApi
{
    public static void MapNotes(this RouteGroupBuilder api)
    {
        api.MapPut("/notes/{id:guid}", PutAsync).Produces<NoteView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/notes", ListAsync).Produces<IReadOnlyList<NoteView>>().Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> PutAsync(Guid id, NoteRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("text", request.Text) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        if (!Times.IsReckonable(request.From)) return Answers.Invalid("from", "field.time");
        if (!Times.IsReckonable(request.To)) return Answers.Invalid("to", "field.time");
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        var note = Note(id, request);
        if (await KnownAsync(id, host, store, cancellation) is { } known)
            return known.Body is NoteEntry { Note: var kept } && kept.SaysWhat(note) ? Answers.Ok(await OneAsync(kept, host, store, cancellation)) : Answers.Conflict("id", "id.taken");
        if (await ObjectionAsync(note, host, store, cancellation) is { } no) return no;
        var outcome = await host.SendAsync(worker.Partition.Value, at => new NoteWritten(at, note), cancellation);
        if (outcome is Outcome.TurnedDown down) return Answers.From(down);
        return await store.EntryAsync(worker.Partition, id, cancellation) is { Body: NoteEntry taken } ? Answers.Ok(await OneAsync(taken.Note, host, store, cancellation)) : Answers.NotFound($"note {id}");
    }

    private static SpanNote Note(Guid id, NoteRequest request) => new(id, request.PoolId!, request.From, request.To, request.Text?.Trim() ?? "", request.By?.Trim() ?? "")
    {
        Corrects = request.Corrects, Why = string.IsNullOrWhiteSpace(request.Why) ? null : request.Why.Trim(), Retracted = request.Retracted,
    };

    // The state remembers the newest only; what is older is looked up in the record.
    private static async Task<IResult?> ObjectionAsync(SpanNote note, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (note.Corrects is not { } wrong) return null;
        if (await KnownAsync(wrong, host, store, cancellation) is not { Body: NoteEntry { Note: var old } }) return Answers.Invalid("corrects", "note.corrects_unknown");
        if (old.PoolId != note.PoolId) return Answers.Invalid("corrects", "note.of_another_pool");
        return (await RowsAsync(note.PoolId, host, store, cancellation)).Any(n => n.Corrects == wrong) ? Answers.Conflict("corrects", "note.corrected_already") : null;
    }

    private static async Task<IResult> ListAsync(string? pool, string? from, string? to, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (pool is null || host.WithPool(pool) is null) return Answers.NotFound($"pool {pool}");
        if (Times.Open(from, to, out var start, out var end) is { } no) return no;
        return Answers.Ok(await TouchingAsync(pool, start, end, host, store, cancellation));
    }

    /// <summary>The notes of a pool that touch a time, each in its newest version, newest first.</summary>
    public static async Task<IReadOnlyList<NoteView>> TouchingAsync(string pool, Instant from, Instant to, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        [.. NoteViews.Newest(await RowsAsync(pool, host, store, cancellation)).Where(n => NoteViews.Touches(n, from, to))];

    private static async Task<NoteView> OneAsync(SpanNote note, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        NoteViews.Of(note, (await RowsAsync(note.PoolId, host, store, cancellation)).ToDictionary(n => n.Id));

    // All of the pool: a correction may have moved a note into the time or out of it. In every circuit, for a pool may have come from another one.
    private static async Task<IReadOnlyList<SpanNote>> RowsAsync(string pool, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var notes = new List<SpanNote>();
        foreach (var worker in host.Circuits.ToArray())
            notes.AddRange((await store.EntriesAsync(worker.Partition, new EntryQuery(["note"], pool, Limit: int.MaxValue), cancellation)).Select(r => r.Body).OfType<NoteEntry>().Select(n => n.Note));
        return notes;
    }

    private static async Task<RecordEntry?> KnownAsync(Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known) return known;
        return null;
    }
}
