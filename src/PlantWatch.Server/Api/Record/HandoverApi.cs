using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The handover between two shifts: shown, written by who leaves, signed by who comes in.</summary>
internal static class HandoverApi
{
    private const int Rows = 200;

    public static void MapHandover(this RouteGroupBuilder api)
    {
        api.MapGet("/handover", async (PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation) => Answers.Ok(await ViewAsync(host, store, clock, cancellation))).Produces<HandoverView>();
        api.MapPost("/handover/note", NoteAsync).Produces<HandoverView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapPost("/handover/sign", SignAsync).Produces<HandoverView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> NoteAsync(HandoverNote request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("note", request.Note)) is { } tooLong) return tooLong;
        if (await IsOverAsync(request.Id, host, store, cancellation)) return Answers.Conflict("id", "id.taken");
        if (Objection(host, state => HandoverObjection.ToWrite(state, request.Id, request.By ?? "")) is { } no) return no;
        return await TellAsync(host, (_, at) => new HandoverWritten(at, request.Id, request.By ?? "", request.Note ?? ""), cancellation) ?? Answers.Ok(await ViewAsync(host, store, clock, cancellation));
    }

    private static async Task<IResult> SignAsync(HandoverSignature request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("remark", request.Remark)) is { } tooLong) return tooLong;
        if (Objection(host, state => HandoverObjection.ToSign(state, request.Id, request.By ?? "")) is { } no) return no;
        // Looked at for all before the first is told: what changed in one circuit must not leave the others signed.
        var states = host.Circuits.ToArray().Select(w => w.State).ToArray();
        var shown = request.Shown ?? "";
        if (states.Any(s => s.Handover.SignedId != request.Id) && shown != HandoverViews.Shown(states, Instant.From(clock.GetUtcNow())))
            return Answers.Problem(StatusCodes.Status409Conflict, "Not possible any more", [new FieldSaid("shown", "handover.changed", Reader.Words.Find("handover.changed"))]);
        return await TellAsync(host, (circuit, at) => new HandoverSigned(at, request.Id, request.By ?? "", request.Remark, HandoverViews.ShownOf(shown, circuit) ?? ""), cancellation)
            ?? Answers.Ok(await ViewAsync(host, store, clock, cancellation));
    }

    // One that another took the place of, sent again by a phone that lost its answer, must not come back in its place.
    private static async Task<bool> IsOverAsync(Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        foreach (var worker in host.Circuits.ToArray())
        {
            if (worker.State.Handover.Id == id || worker.State.Handover.SignedId == id) continue;
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["handover"], Limit: Rows), cancellation);
            if (rows.Any(r => r.Body is HandoverEntry entry && entry.HandoverId == id)) return true;
        }

        return false;
    }

    // Asked of all before the first is told.
    private static IResult? Objection(PlantHost host, Func<CircuitState, Outcome.TurnedDown?> ask) =>
        host.Circuits.ToArray().Select(w => ask(w.State)).FirstOrDefault(no => no is not null) is { } first ? Answers.From(first) : null;

    // Every circuit keeps its part. Sent again after a break it reaches those that it had not reached.
    private static async Task<IResult?> TellAsync(PlantHost host, Func<string, Instant, PlantEvent> make, CancellationToken cancellation)
    {
        foreach (var worker in host.Circuits.ToArray())
            if (await host.SendAsync(worker.Partition.Value, at => make(worker.State.Plan.Id, at), cancellation) is Outcome.TurnedDown no) return Answers.From(no);
        return null;
    }

    private static async Task<HandoverView> ViewAsync(PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        var circuits = new List<(CircuitState, IReadOnlyList<HandoverEntry>, IReadOnlyList<Instant>)>();
        foreach (var worker in host.Circuits.ToArray())
        {
            var rows = (await store.EntriesAsync(worker.Partition, new EntryQuery(["handover"], Limit: Rows), cancellation)).Where(r => r.Body is HandoverEntry).ToArray();
            circuits.Add((worker.State, [.. rows.Select(r => (HandoverEntry)r.Body)], [.. rows.Select(r => r.At)]));
        }

        return HandoverViews.Of(circuits, Instant.From(clock.GetUtcNow()), Reader.Words);
    }
}
