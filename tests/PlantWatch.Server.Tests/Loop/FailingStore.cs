using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Loop;

/// <summary>A record whose commits fail for as long as the test says so.</summary>
/// <param name="failure">Asked at each commit: what it fails with; null lets it pass.</param>
internal sealed class FailingStore(Func<Exception?> failure) : IRecordStore
{
    private readonly InMemoryStore _inner = new(TimeZoneInfo.Utc);
    private int _attempts;

    /// <summary>Commits tried, failed ones among them.</summary>
    public int Attempts => Volatile.Read(ref _attempts);

    public ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation)
    {
        Interlocked.Increment(ref _attempts);
        return failure() is { } fault ? throw fault : _inner.CommitAsync(commits, cancellation);
    }

    public ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation) => _inner.LastSeqAsync(partition, cancellation);

    public IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, CancellationToken cancellation) => _inner.JournalAsync(partition, afterSeq, cancellation);

    public ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation) => _inner.SaveSnapshotAsync(partition, snapshot, cancellation);

    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) =>
        _inner.LatestSnapshotAsync(partition, foldVersion, cancellation);

    public ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation) => _inner.PruneJournalAsync(partition, before, cancellation);

    public ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation) => _inner.RenamePartitionAsync(from, to, cancellation);

    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => _inner.BackFillsAsync(partition, cancellation);

    public ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation) =>
        _inner.EntriesAsync(partition, query, cancellation);

    public ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation) => _inner.EntryAsync(partition, id, cancellation);

    public ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation) => _inner.RefusalsAsync(partition, limit, cancellation);

    public ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation) => _inner.ForgottenRefusalsAsync(partition, cancellation);

    public ValueTask DisposeAsync() => _inner.DisposeAsync();
}
