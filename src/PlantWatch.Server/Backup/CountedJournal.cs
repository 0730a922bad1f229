using System.Runtime.CompilerServices;
using PlantWatch.Storage;

namespace PlantWatch.Server.Backup;

/// <summary>A journal that tells how far it was read.</summary>
internal sealed class CountedJournal(IJournalSource source, long whole, Action<long, long>? told) : IJournalSource
{
    private const int Between = 1000;

    public async IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var row in source.JournalAsync(partition, afterSeq, cancellation))
        {
            if (row.Seq % Between == 0) told?.Invoke(row.Seq, whole);
            yield return row;
        }
    }

    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) => source.LatestSnapshotAsync(partition, foldVersion, cancellation);

    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => source.BackFillsAsync(partition, cancellation);
}
