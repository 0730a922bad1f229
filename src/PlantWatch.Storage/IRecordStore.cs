using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage;

/// <summary>The record: journal, readings, refusals and entries, made durable together. One writer; readers at any time.</summary>
/// <remarks>Every member takes the partition key, so that partitions can live in different stores later. One contract suite holds every implementation.</remarks>
public interface IRecordStore : IJournalSource, IAsyncDisposable
{
    /// <summary>Makes batches durable in one transaction: all of them or none. When it returns, they survive a power cut.</summary>
    /// <remarks>
    /// Several batches of one partition may come together, in order. A batch holds the renames of one plan reload at most: series are renamed before the readings of their batch are stored, all at
    /// once; a reading of that batch under a former key goes to the renamed series, unless another one took this key. A series that stands in
    /// the way of a new key keeps its readings under a key of its own. What is rolled up does not depend on the order of arrival.
    /// </remarks>
    /// <exception cref="StorageException">The store failed; nothing was written and it stays usable.</exception>
    /// <exception cref="OutOfSequenceException">A batch does not follow the last one of its partition; nothing was written.</exception>
    ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation);

    /// <summary>Sequence number of the last batch of a partition; 0 before the first.</summary>
    ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation);

    /// <summary>Keeps a snapshot. The two newest are kept, older ones go.</summary>
    ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation);

    /// <summary>Drops journal rows that are older than <paramref name="before"/> and at or below the older of the two newest snapshots. Returns how many went.</summary>
    ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation);

    /// <summary>Gives a circuit's partition its new key; everything it holds follows. False when <paramref name="from"/> holds nothing or <paramref name="to"/> is taken: nothing was changed then.</summary>
    ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation);

    /// <summary>Rows of the record, newest first by <see cref="RecordEntry.HappenedAt"/>.</summary>
    ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation);

    /// <summary>One row of the record by its id; null when there is none.</summary>
    ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation);

    /// <summary>How many refused items of each reason are only counted any more: a store may forget the older ones of a reason, never the newest thousand unless they are large.</summary>
    ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation);

    /// <summary>Refused items, newest first.</summary>
    ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation);
}

/// <summary>The readings as series.</summary>
public interface ISeriesStore
{
    /// <summary>A series over a time range for a given width in pixels, from the coarsest tier that still fills the width.</summary>
    /// <remarks>The first bucket may begin before the range and the last end after it, by less than a pixel. A silence of more than 2.5 times the longer of bucket and expected interval is a gap.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The query has no width or its range is empty.</exception>
    ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation);

    /// <summary>Raw readings in time order from the start (included) to the end (excluded), at most the first <paramref name="limit"/>.</summary>
    ValueTask<IReadOnlyList<StoredReading>> RawAsync(PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation);

    /// <summary>The time before which raw readings were let go by the retention, of one series or the latest of all of a partition: before it <see cref="RawAsync"/> and <see cref="WindowAsync"/> find nothing, and a line comes from a coarser tier. Never when all are there.</summary>
    ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation);

    /// <summary>What a series did in a window: count, mean, deviation (of a sample, n - 1) and slope of its good raw readings, start included, end excluded.</summary>
    ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation);
}

/// <summary>One batch of one circuit, to be made durable as a whole.</summary>
/// <param name="Partition">The circuit.</param>
/// <param name="Seq">The last sequence number committed in the partition plus one.</param>
/// <param name="ReceivedAt">Receive time of its newest event.</param>
/// <param name="Events">The events as the journal codec wrote them.</param>
/// <param name="Result">What Step made of them.</param>
public sealed record Commit(PartitionKey Partition, long Seq, Instant ReceivedAt, ReadOnlyMemory<byte> Events, StepResult Result);

/// <summary>What storage found while committing a batch: back-filled readings that were there already.</summary>
/// <param name="Partition">The circuit.</param>
/// <param name="Seq">The batch.</param>
/// <param name="BackFills">What its back-fills turned out to be.</param>
public sealed record CommitReceipt(PartitionKey Partition, long Seq, BackFillTally BackFills);

/// <summary>What became of readings that were not the newest of their series, which only storage can tell.</summary>
/// <param name="AlreadyThere">The same value at the same time was stored before: duplicates.</param>
/// <param name="Conflicting">Another value was stored for that time: the first one stands, this one is kept as a refusal.</param>
public readonly record struct BackFillTally(long AlreadyThere, long Conflicting);

/// <summary>One row of the journal.</summary>
public sealed record JournalRow(long Seq, Instant ReceivedAt, ReadOnlyMemory<byte> Events);

/// <summary>A state of a circuit after a batch, from which a restart goes on.</summary>
/// <param name="Seq">The batch after which it was taken.</param>
/// <param name="FoldVersion">Version of the fold that made it.</param>
/// <param name="StateHash">SHA-256 of <paramref name="State"/>, lower-case hexadecimal.</param>
/// <param name="State">Canonical bytes of the state.</param>
public sealed record Snapshot(long Seq, int FoldVersion, string StateHash, ReadOnlyMemory<byte> State);

/// <summary>Which rows of the record.</summary>
/// <param name="Kinds">Kinds such as check or alarm; empty means all.</param>
/// <param name="Subject">Only rows about this pool, probe, pump or alarm; null means any.</param>
/// <param name="From">Earliest HappenedAt, included; never means open.</param>
/// <param name="To">Latest HappenedAt, excluded; never means open.</param>
/// <param name="Limit">At most so many.</param>
public sealed record EntryQuery(IReadOnlyList<string> Kinds, string? Subject = null, Instant From = default, Instant To = default, int Limit = 500);

/// <summary>A series query.</summary>
/// <param name="Series">Probe id, or a pump's series.</param>
/// <param name="From">Start, included.</param>
/// <param name="To">End, excluded.</param>
/// <param name="Width">Pixels to fill; the answer has at most this many points, gaps apart.</param>
/// <param name="Expected">How often the series is expected to speak: longer silences are gaps. Zero when nothing is expected: raw readings then have no gaps.</param>
public sealed record SeriesQuery(string Series, Instant From, Instant To, int Width, TimeSpan Expected)
{
    /// <summary>Stops a query that no store can answer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It has no width or its range is empty.</exception>
    public void ThrowIfImpossible()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(Width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(To, From);
    }
}

/// <summary>Which store of readings answered.</summary>
public enum Tier
{
    /// <summary>Raw readings.</summary>
    Raw = 0,
    /// <summary>One minute.</summary>
    Minute,
    /// <summary>Fifteen minutes.</summary>
    QuarterHour,
    /// <summary>One hour.</summary>
    Hour,
    /// <summary>The site's day, 23 to 25 hours.</summary>
    Day,
}

/// <summary>A series ready to draw.</summary>
/// <param name="Series">Which.</param>
/// <param name="Tier">The tier that answered.</param>
/// <param name="Points">Points in time order; a gap is a point without count.</param>
public sealed record SeriesAnswer(string Series, Tier Tier, IReadOnlyList<SeriesPoint> Points);

/// <summary>A point or a gap of a series. Values are raw; the default is a gap at no time.</summary>
/// <param name="At">Start of the bucket, or the reading's time.</param>
/// <param name="Count">Readings; 0 marks a gap.</param>
/// <param name="Good">Good ones among them.</param>
/// <param name="Min">Lowest good value, or lowest of all when none was good.</param>
/// <param name="Mean">Mean of the good values, or of all when none was good.</param>
/// <param name="Max">Highest good value, or highest of all when none was good.</param>
/// <param name="Last">Newest value.</param>
public readonly record struct SeriesPoint(Instant At, int Count, int Good, double Min, double Mean, double Max, double Last)
{
    /// <summary>A gap that starts at <paramref name="at"/>.</summary>
    public static SeriesPoint Gap(Instant at) => new(at, 0, 0, 0, 0, 0, 0);

    /// <summary>True for a gap.</summary>
    public bool IsGap => Count == 0;
}

/// <summary>A raw reading as stored.</summary>
public readonly record struct StoredReading(Instant MeasuredAt, Instant ReceivedAt, double Raw, Quality Quality);

/// <summary>A batch does not follow the last one of its partition: two writers, or a lost one. The caller must rebuild its state.</summary>
public sealed class OutOfSequenceException(PartitionKey partition, long expected, long got)
    : Exception($"partition {partition}: batch {got} does not follow, {expected} was expected");
