using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Pools are opened, closed, covered and drained by people; the gate is there to be read before.</summary>
internal static class PoolStateApi
{
    public static void MapPoolStates(this RouteGroupBuilder api)
    {
        api.MapGet("/pools/{id}/gate", (string id, PlantHost host, TimeProvider clock) => Gate(id, host, clock)).Produces<GateView>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPut("/pools/{id}/state/{actId:guid}", SetAsync).Produces<GateView>().Produces<Problem>(StatusCodes.Status400BadRequest)
            .Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
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
            [.. lines.Select(line => new GateLineView(line.Code, line.Word, Wording.English.Say(line.Reason)))]));
    }
}
