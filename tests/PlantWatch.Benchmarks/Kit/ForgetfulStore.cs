using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>A record that keeps nothing: what is left of the loop when the disk costs nothing.</summary>
internal sealed class ForgetfulStore : IRecordStore
{
    public ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation) =>
        ValueTask.FromResult<IReadOnlyList<CommitReceipt>>([.. commits.Select(c => new CommitReceipt(c.Partition, c.Seq, default))]);

    public ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation) => ValueTask.FromResult(0L);

    public async IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        await Task.CompletedTask;
        yield break;
    }

    public ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation) => ValueTask.CompletedTask;

    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) => ValueTask.FromResult<Snapshot?>(null);

    public ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation) => ValueTask.FromResult(0L);

    public ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation) => ValueTask.FromResult(false);

    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => ValueTask.FromResult(default(BackFillTally));

    public ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation) => ValueTask.FromResult<IReadOnlyList<RecordEntry>>([]);

    public ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation) => ValueTask.FromResult<RecordEntry?>(null);

    public ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation) => ValueTask.FromResult<IReadOnlyList<Refusal>>([]);

    public ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation) =>
        ValueTask.FromResult<IReadOnlyDictionary<RefusalReason, long>>(new Dictionary<RefusalReason, long>());

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
