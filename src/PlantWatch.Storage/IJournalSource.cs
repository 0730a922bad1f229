namespace PlantWatch.Storage;

/// <summary>What a circuit's state is made from again: a snapshot and the journal after it, or the journal alone.</summary>
public interface IJournalSource
{
    /// <summary>The batches after a sequence number, oldest first.</summary>
    IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, CancellationToken cancellation);

    /// <summary>The newest snapshot that the given fold version made; null when there is none.</summary>
    ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation);

    /// <summary>What back-fills turned out to be, summed over all commits of the partition: corrects the ledger of the state.</summary>
    ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation);
}
