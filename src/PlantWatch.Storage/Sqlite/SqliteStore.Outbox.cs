using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

public sealed partial class SqliteStore : IOutbox
{
    /// <inheritdoc/>
    public async ValueTask QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(notices);
        await WriteAsync(() => OutboxTable.Queue(_writer, partition, notices, at), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<OutboxItem>> OutboxAsync(PartitionKey partition, CancellationToken cancellation) =>
        Read(session => OutboxTable.All(session, partition), cancellation);

    /// <inheritdoc/>
    public async ValueTask NoteAsync(PartitionKey partition, Guid notice, Attempt attempt, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        await WriteAsync(() => OutboxTable.Note(_writer, partition, notice, attempt), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public ValueTask<long> ForgetAsync(PartitionKey partition, Instant before, IReadOnlyCollection<Guid> keptAlarms, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(keptAlarms);
        return WriteAsync(() => OutboxTable.Forget(_writer, partition, before, keptAlarms), cancellation);
    }
}
