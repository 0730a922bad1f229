using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>A record in SQLite whose series are read from InfluxDB: after each commit all that is owed is written there.</summary>
internal sealed class FedStore(SqliteStore store, InfluxDoor door, Influxd influxd, string database, TimeZoneInfo zone) : IRecordStore, IOutbox, ISeriesStore
{
    private readonly SeriesFeeder _feeder = new(store, door, TimeProvider.System);
    private readonly InfluxSeries _series = new(door, zone);

    public async ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation)
    {
        var receipts = await store.CommitAsync(commits, cancellation);
        await FeedAsync(commits.Any(c => !c.Result.Renamed.IsDefaultOrEmpty));
        return receipts;
    }

    public async ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation)
    {
        var renamed = await store.RenamePartitionAsync(from, to, cancellation);
        await FeedAsync(renamed);
        return renamed;
    }

    public ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation) => _series.SeriesAsync(partition, query, cancellation);

    public ValueTask<IReadOnlyList<StoredReading>> RawAsync(PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation) =>
        _series.RawAsync(partition, series, from, to, limit, cancellation);

    public ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation) => ValueTask.FromResult(Instant.Never);

    public ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation) => _series.WindowAsync(partition, series, from, to, cancellation);

    public ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation) => store.LastSeqAsync(partition, cancellation);

    public IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, CancellationToken cancellation) => store.JournalAsync(partition, afterSeq, cancellation);

    public ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation) => store.SaveSnapshotAsync(partition, snapshot, cancellation);

    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) => store.LatestSnapshotAsync(partition, foldVersion, cancellation);

    public ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation) => store.PruneJournalAsync(partition, before, cancellation);

    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => store.BackFillsAsync(partition, cancellation);

    public ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation) => store.EntriesAsync(partition, query, cancellation);

    public ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation) => store.EntryAsync(partition, id, cancellation);

    public ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation) => store.ForgottenRefusalsAsync(partition, cancellation);

    public ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation) => store.RefusalsAsync(partition, limit, cancellation);

    public ValueTask QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at, CancellationToken cancellation) => store.QueueAsync(partition, notices, at, cancellation);

    public ValueTask<IReadOnlyList<OutboxItem>> OutboxAsync(PartitionKey partition, CancellationToken cancellation) => store.OutboxAsync(partition, cancellation);

    public ValueTask NoteAsync(PartitionKey partition, Guid notice, Attempt attempt, CancellationToken cancellation) => store.NoteAsync(partition, notice, attempt, cancellation);

    public ValueTask<long> ForgetAsync(PartitionKey partition, Instant before, IReadOnlyCollection<Guid> keptAlarms, CancellationToken cancellation) => store.ForgetAsync(partition, before, keptAlarms, cancellation);

    public async ValueTask DisposeAsync()
    {
        door.Dispose();
        await store.DisposeAsync();
    }

    // Old names stay in InfluxDB: where they must go, it is emptied and written anew, as operations.md says.
    private async Task FeedAsync(bool isRenamed)
    {
        if (isRenamed)
        {
            await influxd.AskAsync($"DROP DATABASE {database}; CREATE DATABASE {database}");
            await store.WriteAllAgainAsync(default);
        }

        while (await _feeder.StepAsync(default) is var step && (step.Written > 0 || step.IsMore || step.Answer.Taking != Taking.Taken)) Assert.Equal((Taking.Taken, ""), (step.Answer.Taking, step.Answer.Words));
    }
}
