using System.Collections.Immutable;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Which to believe: the story of a pool's probes and tests.</summary>
internal static class TrustApi
{
    public static void MapTrust(this RouteGroupBuilder api) =>
        api.MapGet("/pools/{id}/trust", async (string id, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation) =>
        {
            if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
            var state = worker.State;
            // A reload may have taken the pool away between two looks.
            if (state.Plan.Pools.FirstOrDefault(p => p.Id == id) is not { } plan || state.Pools.FirstOrDefault(p => p.Id == id) is not { } pool) return Answers.NotFound($"pool {id}");
            var (check, judgements) = await NewestAsync(store, worker.Partition, PoolStories.NewestCheck(pool), cancellation);
            var words = Reader.Words.In(Reader.UnitsIn(host.Plan));
            return Answers.Ok(TrustViews.Of(state, plan, Instant.From(clock.GetUtcNow()), check, judgements, words));
        }).Produces<TrustStoryView>().Produces<Problem>(StatusCodes.Status404NotFound);

    // The state keeps the pairs; where the sample was taken, what the panel showed and why something could not be compared stands in the record.
    private static async Task<(ManualCheck? Check, ImmutableArray<Judgement> Judgements)> NewestAsync(
        IRecordStore store, PartitionKey partition, Guid id, CancellationToken cancellation)
    {
        if (id == Guid.Empty || await store.EntryAsync(partition, id, cancellation) is not { Body: CheckEntry entry }) return (null, []);
        var at = entry.Check.SampledAt;
        var rows = await store.EntriesAsync(partition, new EntryQuery(["judgement"], null, at, at + TimeSpan.FromMicroseconds(1)), cancellation);
        return (entry.Check, [.. rows.Select(r => r.Body).OfType<JudgementEntry>().Select(j => j.Judgement).Where(j => j.CheckId == id)]);
    }
}
