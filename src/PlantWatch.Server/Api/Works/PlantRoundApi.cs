using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Rounds through the plant room.</summary>
internal static class PlantRoundApi
{
    private const int Readings = 500;
    private const int Remembered = 500;

    public static void MapPlantRounds(this RouteGroupBuilder api)
    {
        api.MapGet("/plant-rounds", (PlantHost host, TimeProvider clock) =>
            Answers.Ok(host.Circuits.ToArray().Select(w => PlantRoundViews.Of(w.State, Instant.From(clock.GetUtcNow()), Reader.Words)).ToArray())).Produces<IReadOnlyList<PlantRoundView>>();
        api.MapPut("/plant-rounds/{id:guid}", PutAsync).Produces<PlantRoundAnswer>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> PutAsync(Guid id, PlantRoundRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (host.Circuits.FirstOrDefault(w => w.Partition.Value == request.Circuit) is not { } worker) return Answers.Invalid("circuit", "circuit.not_known");
        if (Objection(request) is { } no) return no;
        var round = new PlantRound(id, request.WalkedAt, request.By?.Trim() ?? "", [.. request.Readings ?? []], string.IsNullOrWhiteSpace(request.Remark) ? null : request.Remark.Trim());
        // What a phone sends again may be older than what the state remembers.
        if (await EntryAsync(store, worker, id, cancellation) is { } known)
            return known.Round.SaysWhat(round) ? Answers.Ok(PlantRoundViews.Answer(worker.State.Plan, known, Reader.Words)) : Answers.Conflict("id", "id.taken");
        if (await host.SendAsync(worker.Partition.Value, at => new PlantRoundDone(at, round), cancellation) is Outcome.TurnedDown turned) return Answers.From(turned);
        return await EntryAsync(store, worker, id, cancellation) is { } entry ? Answers.Ok(PlantRoundViews.Answer(worker.State.Plan, entry, Reader.Words)) : Answers.NotFound($"round {id}");
    }

    private static async Task<RoundEntry?> EntryAsync(IRecordStore store, CircuitWorker worker, Guid id, CancellationToken cancellation) =>
        (await store.EntriesAsync(worker.Partition, new EntryQuery(["plant_round"], Limit: Remembered), cancellation)).Select(r => r.Body).OfType<RoundEntry>().FirstOrDefault(e => e.Round.Id == id);

    private static IResult? Objection(PlantRoundRequest request)
    {
        var readings = request.Readings ?? [];
        return Bounds.OfName("by", request.By) ?? Bounds.OfRemark("remark", request.Remark) ?? Bounds.OfList("readings", readings, Readings)
            ?? readings.Select((r, i) => string.IsNullOrWhiteSpace(r.ItemId) ? Answers.Invalid($"readings[{i}]", "field.required") : Bounds.OfName($"readings[{i}]", r.ItemId) ?? Bounds.OfRemark($"readings[{i}]", r.Remark)).FirstOrDefault(r => r is not null);
    }
}
