using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>How a pool's water goes round, and what fresh water does to it.</summary>
internal static class CirculationApi
{
    public static void MapCirculation(this RouteGroupBuilder api) =>
        api.MapGet("/pools/{id}/circulation", OfAsync).Produces<CirculationView>().Produces<Problem>(StatusCodes.Status404NotFound);

    private static async Task<IResult> OfAsync(
        string id, int? bathers, double? litresPerBather, double? backwashFlow, double? backwashMinutes, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        var (now, state, units) = (Instant.From(clock.GetUtcNow()), worker.State, Reader.UnitsIn(host.Plan));
        var washes = (await store.EntriesAsync(worker.Partition, new EntryQuery(["filter_washed"], From: now - TimeSpan.FromDays(WashWaterViews.Days)), cancellation))
            .Where(e => e.Body is FilterEntry).Select(e => (e.HappenedAt, (FilterEntry)e.Body));
        return Answers.Ok(CirculationViews.Of(
            state.Plan, new FreshWaterAsked(bathers, litresPerBather, backwashFlow, backwashMinutes), units, WashWaterViews.Of(DoseSituations.Of(state, id, host.Plan, now), washes, units)));
    }
}
