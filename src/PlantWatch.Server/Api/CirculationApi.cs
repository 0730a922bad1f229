using PlantWatch.Core.Plans;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>How a pool's water goes round, and what fresh water does to it.</summary>
internal static class CirculationApi
{
    public static void MapCirculation(this RouteGroupBuilder api) =>
        api.MapGet("/pools/{id}/circulation", (string id, int? bathers, double? litresPerBather, double? backwashFlow, double? backwashMinutes, PlantHost host) =>
            host.WithPool(id) is { } worker
                ? Answers.Ok(CirculationViews.Of(
                    worker.State.Plan, new FreshWaterAsked(bathers, litresPerBather, backwashFlow, backwashMinutes), host.Plan?.Site.Units ?? UnitSystem.Metric))
                : Answers.NotFound($"pool {id}")).Produces<CirculationView>().Produces<Problem>(StatusCodes.Status404NotFound);
}
