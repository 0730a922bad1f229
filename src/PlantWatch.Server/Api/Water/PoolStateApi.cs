using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Pools are opened, closed, covered and drained by people; the gate is there to be read before.</summary>
internal static class PoolStateApi
{
    private const int ChangesShown = 200;

    public static void MapPoolStates(this RouteGroupBuilder api)
    {
        api.MapGet("/pools/{id}/gate", (string id, PlantHost host, TimeProvider clock) => Gate(id, host, clock)).Produces<GateView>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPut("/pools/{id}/state/{actId:guid}", SetAsync).Produces<GateView>().Produces<Problem>(StatusCodes.Status400BadRequest)
            .Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/pool-states", ChangesAsync).Produces<IReadOnlyList<PoolStateChangeView>>().Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> ChangesAsync(string? pool, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (pool is not null && host.WithPool(pool) is null) return Answers.NotFound($"pool {pool}");
        var all = new List<PoolStateChangeView>();
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["pool_state"], pool, Limit: ChangesShown), cancellation))
                if (row is { Body: PoolStateEntry entry, Subject: { } subject }) all.Add(Change(row.At, subject, entry));
        return Answers.Ok(all.OrderByDescending(c => c.At).Take(ChangesShown).ToArray());
    }

    private static PoolStateChangeView Change(Instant at, string pool, PoolStateEntry entry)
    {
        var now = entry.Operation;
        return new(at, pool, entry.Before, now.State, now.By, now.Why, now.ForCause, entry.ByIncident, entry.Refilled);
    }

    private static async Task<IResult> SetAsync(string id, Guid actId, PoolStateRequest request, PlantHost host, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(actId)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        var outcome = await host.SendAsync(
            worker.Partition.Value, at => new PoolStateSet(at, actId, id, request.State, request.By.Trim(), request.Why, request.ForCause, request.Refilled), cancellation);
        return outcome is Outcome.TurnedDown no ? Answers.From(no) : Gate(id, host, clock);
    }

    private static IResult Gate(string id, PlantHost host, TimeProvider clock)
    {
        if (host.WithPool(id)?.State is not { } state || state.Pools.FirstOrDefault(p => p.Id == id) is not { } pool) return Answers.NotFound($"pool {id}");
        var lines = OpeningGate.Of(state.Plan, state, state.Plan.Pools.First(p => p.Id == id), Instant.From(clock.GetUtcNow()));
        return Answers.Ok(new GateView(
            id, PoolViews.Operation(pool.Operation), lines.All(line => line.Word == GateWord.Passed),
            [.. lines.Select(line => new GateLineView(line.Code, line.Word, Reader.Words.Say(line.Reason)))],
            pool.Operation.ForCause ? [.. state.Plan.People.Where(p => p.MayReopen).Select(p => p.Name)] : null));
    }
}
