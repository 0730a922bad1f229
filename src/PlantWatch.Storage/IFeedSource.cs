using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>What the record still owes to a second store of its series. The record says what is owed; whoever feeds the other store says what it took.</summary>
/// <remarks>
/// Nothing is queued twice: the readings themselves are the queue. Each series has a mark up to which it was written, and minutes that got a reading behind that mark are noted in the commit that
/// brings it. Both survive a kill; what was written and not yet noted is written again, which a store that knows a point by name and time does not double.
/// </remarks>
public interface IFeedSource
{
    /// <summary>Takes up series that are new: they are owed whole from here on.</summary>
    ValueTask TakeUpAsync(CancellationToken cancellation);

    /// <summary>The next readings that are owed, about so many; new series are taken up first. Empty when nothing is owed.</summary>
    /// <param name="most">Readings wanted; a marked minute is never cut, so there may be more.</param>
    /// <param name="ahead">A page that is on its way and not noted yet: it is left out.</param>
    /// <exception cref="StorageException">The store failed.</exception>
    ValueTask<FeedPage> NextAsync(int most, FeedPage? ahead, CancellationToken cancellation);

    /// <summary>Notes that a page was taken, but for what was parked. The note itself may be lost in a power cut: the page is then owed again.</summary>
    ValueTask NoteAsync(FeedPage page, IReadOnlyList<ParkedLines> parked, CancellationToken cancellation);

    /// <summary>Forgets how far it had read: the next page begins at what is noted.</summary>
    void Forget();

    /// <summary>What is owed and what is parked.</summary>
    ValueTask<Backlog> BacklogAsync(CancellationToken cancellation);

    /// <summary>Parked lines, newest first.</summary>
    ValueTask<IReadOnlyList<ParkedLines>> ParkedAsync(CancellationToken cancellation);

    /// <summary>What every series holds in a span of whole quarters of an hour.</summary>
    ValueTask<IReadOnlyList<HeldReadings>> HeldAsync(Instant from, Instant to, CancellationToken cancellation);

    /// <summary>Has a span of a series written again.</summary>
    ValueTask WriteAgainAsync(long series, Instant from, Instant to, CancellationToken cancellation);

    /// <summary>Has everything written again, from the first reading; what was parked gets another chance.</summary>
    ValueTask WriteAllAgainAsync(CancellationToken cancellation);

    /// <summary>A number kept under a name; null when none is.</summary>
    ValueTask<long?> NotedAsync(string name, CancellationToken cancellation);

    /// <summary>Keeps a number under a name; null takes it away.</summary>
    ValueTask KeepAsync(string name, long? value, CancellationToken cancellation);
}

/// <summary>Readings on their way to the other store.</summary>
/// <param name="Pieces">Of one series each.</param>
/// <param name="IsMore">More may be owed than is in it.</param>
public sealed record FeedPage(IReadOnlyList<FeedPiece> Pieces, bool IsMore = false)
{
    /// <summary>Readings in it.</summary>
    public int Readings { get; } = Pieces.Sum(piece => piece.Readings.Count);
}

/// <summary>Readings of one series in time order, and what is noted when they are written.</summary>
/// <param name="Series">The series, as the record counts it.</param>
/// <param name="Circuit">Circuit it is written under.</param>
/// <param name="Probe">Probe, or a pump's series, it is written under.</param>
/// <param name="Formerly">The other name it was written under until now; null when it is the same, or the first.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Was">Mark of the series before, in microseconds since 1970; <see cref="long.MinValue"/> before the first reading.</param>
/// <param name="Upto">Mark after it; the same as before for a minute that is written again.</param>
/// <param name="Minute">Start of the marked minute; null for readings that follow the mark.</param>
/// <param name="Times">How often that minute had been marked when it was read.</param>
public sealed record FeedPiece(long Series, string Circuit, string Probe, string? Formerly, IReadOnlyList<StoredReading> Readings, long Was, long Upto, long? Minute = null, long Times = 0);

/// <summary>Lines of one series that the other side refuses for good.</summary>
/// <param name="Series">The series, as the record counts it.</param>
/// <param name="Circuit">Its circuit.</param>
/// <param name="Probe">Its name there.</param>
/// <param name="First">Time of the first.</param>
/// <param name="Last">Time of the last.</param>
/// <param name="Lines">How many.</param>
/// <param name="Sample">One of them.</param>
/// <param name="Words">What the other side said.</param>
/// <param name="At">When.</param>
public sealed record ParkedLines(long Series, string Circuit, string Probe, Instant First, Instant Last, long Lines, string Sample, string Words, Instant At)
{
    /// <summary>Older than what the other side keeps: nothing is wrong, and nothing is to be done.</summary>
    public bool IsTooOld => Words == Influx.WriteAnswer.BeyondRetention;
}

/// <summary>What is owed. The default owes nothing.</summary>
/// <param name="Readings">Readings still to be written, those of marked minutes included.</param>
/// <param name="Oldest">Receive time of the oldest of them that follows a mark; never when there is none.</param>
/// <param name="Parked">Lines refused for good, each time counted, but for those of <paramref name="TooOld"/>.</param>
/// <param name="TooOld">Lines older than what the other side keeps, each time counted.</param>
public readonly record struct Backlog(long Readings, Instant Oldest, long Parked, long TooOld = 0);

/// <summary>What a series holds in a span.</summary>
/// <param name="Series">The series, as the record counts it.</param>
/// <param name="Circuit">Its circuit.</param>
/// <param name="Probe">Its name there.</param>
/// <param name="Count">Readings.</param>
/// <param name="IsOwed">Some of them are not written yet.</param>
/// <param name="HasParked">Some of them may be refused for good.</param>
public readonly record struct HeldReadings(long Series, string Circuit, string Probe, long Count, bool IsOwed, bool HasParked);
