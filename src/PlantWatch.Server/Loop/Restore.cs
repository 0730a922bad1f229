using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>A circuit as the record left it.</summary>
/// <param name="Partition">The circuit.</param>
/// <param name="State">Its state after the last batch.</param>
/// <param name="Seq">Sequence number of that batch.</param>
/// <param name="LastReceived">Receive time of its newest event: the next one must be later.</param>
/// <param name="BackFills">What back-fills turned out to be.</param>
/// <param name="Replayed">Batches folded again on the way.</param>
internal sealed record RestoredCircuit(PartitionKey Partition, CircuitState State, long Seq, Instant LastReceived, BackFillTally BackFills, int Replayed);

/// <summary>Restart: the newest snapshot of this fold version, then the journal after it. The state is the same as if there had been no stop.</summary>
internal static class Restore
{
    // A state does not depend on where its batches ended, and a batch has a price of its own, whatever it holds.
    private const int FoldedAtOnce = 4096;

    public static async Task<RestoredCircuit> FromAsync(IJournalSource store, PartitionKey partition, CircuitPlan plan, CancellationToken cancellation)
    {
        var snapshot = await store.LatestSnapshotAsync(partition, CircuitState.CurrentFoldVersion, cancellation);
        if (snapshot is not null && PlantJson.Hash(snapshot.State.Span) != snapshot.StateHash) snapshot = null;
        var state = snapshot is null ? CircuitState.Of(Bare(plan)) : PlantJson.ReadState(snapshot.State.Span);
        return await ReplayAsync(store, partition, state, snapshot?.Seq ?? 0, cancellation);
    }

    /// <summary>Folds the whole journal, as a check on snapshots.</summary>
    public static Task<RestoredCircuit> FromZeroAsync(IJournalSource store, PartitionKey partition, CircuitPlan plan, CancellationToken cancellation) =>
        ReplayAsync(store, partition, CircuitState.Of(Bare(plan)), 0, cancellation);

    private static async Task<RestoredCircuit> ReplayAsync(IJournalSource store, PartitionKey partition, CircuitState state, long after, CancellationToken cancellation)
    {
        var (seq, received, replayed) = (after, state.Watermark, 0);
        var events = new List<PlantEvent>();
        await foreach (var row in store.JournalAsync(partition, after, cancellation))
        {
            events.AddRange(JournalCodec.Read(row.Events));
            (seq, received) = (row.Seq, Instant.Later(received, row.ReceivedAt));
            replayed++;
            if (events.Count < FoldedAtOnce && events is not [.., PlanLoaded]) continue;
            state = Step.Run(state, events).Next;
            events.Clear();
        }

        if (events.Count > 0) state = Step.Run(state, events).Next;
        return new RestoredCircuit(partition, state, seq, received, await store.BackFillsAsync(partition, cancellation), replayed);
    }

    // The plan itself is the first event of the journal.
    private static CircuitPlan Bare(CircuitPlan plan) => new() { Id = plan.Id, Name = plan.Name, TimeZone = plan.TimeZone };
}
