using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The rules that can raise an alarm, in words.</summary>
internal static class RulesApi
{
    private static readonly TimeSpan Lately = TimeSpan.FromDays(30);

    public static void MapRules(this RouteGroupBuilder api) => api.MapGet("/rules", GetAsync).Produces<IReadOnlyList<RuleView>>();

    private static async Task<IResult> GetAsync(PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        var (workers, since) = (host.Circuits.ToArray(), Instant.From(clock.GetUtcNow()) - Lately);
        var rang = new List<AlarmHappening>();
        foreach (var worker in workers)
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["alarm"], null, since, Limit: int.MaxValue), cancellation))
                if (row.Body is AlarmEntry entry && AlarmHappening.Of(row.HappenedAt, entry.Alarm, entry.Change) is { Annunciates: true } call) rang.Add(call);
        return Answers.Ok(RuleViews.Of([.. workers.Select(w => w.State)], rang, Reader.Words));
    }
}
