using System.Runtime.CompilerServices;

namespace PlantWatch.Storage.Sqlite;

public sealed partial class SqliteArchive : IJournalSource
{
    /// <inheritdoc/>
    public async IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await ValueTask.CompletedTask.ConfigureAwait(false);
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            var page = _record.JournalPage(partition, afterSeq);
            if (page.Count == 0) yield break;
            foreach (var row in page) yield return row;
            afterSeq = page[^1].Seq;
        }
    }

    /// <inheritdoc/>
    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) => ValueTask.FromResult(_record.LatestSnapshot(partition, foldVersion));

    /// <inheritdoc/>
    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => ValueTask.FromResult(_record.BackFills(partition));
}
