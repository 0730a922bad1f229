using System.Collections.Concurrent;
using PlantWatch.Core.Plant;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>Keeps snapshots now and then, so that a restart need not fold the whole journal.</summary>
/// <remarks>The journal itself is kept whole: a new version of the fold trusts no older snapshot and rebuilds from it.</remarks>
internal sealed class Snapshots(IRecordStore store, TimeProvider clock, ILogger<Snapshots> log)
{
    private const long BatchesBetween = 20_000;
    private static readonly TimeSpan TimeBetween = TimeSpan.FromMinutes(15);

    private readonly ConcurrentDictionary<PartitionKey, (long Seq, long At)> _newest = new();

    /// <summary>Takes a snapshot in the background when one is due. The state is immutable, so the loop need not wait.</summary>
    public void Consider(PartitionKey partition, long seq, CircuitState state)
    {
        // The machine's own time, not the plant's: what is saved is work at the next start.
        var now = clock.GetTimestamp();
        var last = _newest.GetOrAdd(partition, (seq, now));
        if (seq - last.Seq < BatchesBetween && clock.GetElapsedTime(last.At, now) < TimeBetween) return;
        if (_newest.TryUpdate(partition, (seq, now), last)) _ = Task.Run(() => SaveAsync(partition, seq, state));
    }

    public async Task SaveAsync(PartitionKey partition, long seq, CircuitState state)
    {
        if (seq == 0) return;
        try
        {
            var bytes = PlantJson.Write(state);
            await store.SaveSnapshotAsync(partition, new Snapshot(seq, state.FoldVersion, PlantJson.Hash(bytes), bytes), CancellationToken.None);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // A missing snapshot costs time at the next start and nothing else.
            LoopLog.SnapshotFailed(log, partition.Value, fault);
        }
    }
}
