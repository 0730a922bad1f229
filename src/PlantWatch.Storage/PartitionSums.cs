namespace PlantWatch.Storage;

/// <summary>What a record holds of one partition, counted row by row.</summary>
/// <param name="Partition">Key of the circuit.</param>
/// <param name="LastSeq">Its last batch.</param>
/// <param name="Journal">Batches in the journal.</param>
/// <param name="JournalFrom">The first of them; 0 when there is none.</param>
/// <param name="Readings">Raw readings.</param>
/// <param name="Entries">Rows of the record.</param>
/// <param name="Refusals">Refused items that are kept with their bytes.</param>
/// <param name="LetGo">Raw readings that the retention let go.</param>
public sealed record PartitionSums(string Partition, long LastSeq, long Journal, long JournalFrom, long Readings, long Entries, long Refusals, long LetGo = 0)
{
    /// <summary>True when the journal holds every batch from the first to the last.</summary>
    public bool IsJournalWhole => Journal == LastSeq && JournalFrom <= 1;
}
