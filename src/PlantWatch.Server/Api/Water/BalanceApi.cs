using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>The balance of a pool's water now.</summary>
internal static class BalanceApi
{
    public static void MapBalance(this RouteGroupBuilder api) =>
        api.MapGet("/pools/{id}/balance", (string id, PlantHost host, LivePublisher live) =>
            host.WithPool(id) is { } worker && live.View(worker, Reader.Words).Pools.FirstOrDefault(p => p.Id == id) is { } pool
                ? Answers.Ok(pool.Balance)
                : Answers.NotFound($"pool {id}")).Produces<BalanceView>().Produces<Problem>(StatusCodes.Status404NotFound);
}
