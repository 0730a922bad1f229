using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>Reagents: how they stand, and a lot that somebody opens.</summary>
internal static class ReagentApi
{
    public static void MapReagents(this RouteGroupBuilder api)
    {
        api.MapGet("/reagents", (PlantHost host, TimeProvider clock) => Answers.Ok(All(host, clock))).Produces<IReadOnlyList<ReagentView>>();
        api.MapPost("/reagents/{id}/opened", OpenedAsync).Produces<ReagentView>().Produces<Problem>(StatusCodes.Status400BadRequest)
            .Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> OpenedAsync(string id, LotRequest request, PlantHost host, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if (Bounds.OfName("by", request.By) is { } by) return by;
        if (Bounds.OfName("lot", request.Lot) is { } lot) return lot;
        var said = new ReagentLot(request.Id, request.Lot?.Trim() ?? "", request.LastDay, request.OpenedAt, request.By?.Trim() ?? "");
        // All circuits are tested with the same kit. Sent again after a break it reaches those that it had not reached.
        foreach (var worker in host.Circuits.ToArray())
            if (await host.SendAsync(worker.Partition.Value, at => new ReagentOpened(at, id, said), cancellation) is Outcome.TurnedDown no) return Answers.From(no);
        return All(host, clock).FirstOrDefault(r => r.Id == id) is { } kept ? Answers.Ok(kept) : Answers.NotFound($"reagent {id}");
    }

    private static IReadOnlyList<ReagentView> All(PlantHost host, TimeProvider clock) =>
        host.Circuits.ToArray() is [var first, ..] ? ReagentViews.Of((host.Circuits.FirstOrDefault(w => w.State.Plan.Reagents.Any(r => r.IsWatchedHere)) ?? first).State, Instant.From(clock.GetUtcNow())) : [];
}
