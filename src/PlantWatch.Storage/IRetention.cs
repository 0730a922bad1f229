using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>Lets go of what a policy no longer keeps, a little at a time, while everything else goes on. Entries, refusals and journal are no part of it.</summary>
public interface IRetention
{
    /// <summary>Lets go of one piece: raw readings of one series whose minutes stand, or minutes whose quarters of an hour stand.</summary>
    /// <param name="wanted">What is to go.</param>
    /// <param name="most">About so many rows at once.</param>
    /// <param name="cancellation">Ends the wait for the writer's turn.</param>
    /// <returns>What went; null when nothing is left to go.</returns>
    /// <exception cref="RollUpMissingException">The minutes of a series do not hold what its raw readings say; nothing of it was let go.</exception>
    ValueTask<LetGo?> LetGoAsync(Retention wanted, int most, CancellationToken cancellation);

    /// <summary>What the record takes up, and how fast it grows.</summary>
    ValueTask<RecordSize> SizeAsync(Instant now, CancellationToken cancellation);
}

/// <summary>What a policy keeps, as times before which it goes; never keeps all. Quarters of an hour, hours and days are always kept.</summary>
/// <param name="RawBefore">Raw readings measured before it go.</param>
/// <param name="MinutesBefore">Minutes before it go, where the raw readings went.</param>
/// <param name="HeedFeed">Raw readings that are still owed to another store stay until they are there.</param>
public sealed record Retention(Instant RawBefore, Instant MinutesBefore, bool HeedFeed);

/// <summary>A piece that was let go.</summary>
/// <param name="Partition">Circuit.</param>
/// <param name="Series">Series.</param>
/// <param name="Tier">Raw or Minute.</param>
/// <param name="Rows">How many rows.</param>
/// <param name="Before">None of that tier stands before it any more.</param>
public sealed record LetGo(string Partition, string Series, Tier Tier, long Rows, Instant Before);

/// <summary>The minutes of a series do not hold what its raw readings say: letting the raw ones go would lose something.</summary>
public sealed class RollUpMissingException(string partition, string series, Instant minute)
    : StorageException($"{partition}/{series}: the minute {minute} does not hold as many readings as there are; its raw readings stay", mayPass: false);

/// <summary>What a record takes up.</summary>
/// <param name="Bytes">Size of the file, without its log.</param>
/// <param name="FreeBytes">Pages of it that are free and will be used again.</param>
/// <param name="Tables">Bytes by table with its indexes, largest first; empty where the engine cannot tell.</param>
/// <param name="Readings">Raw readings that are there.</param>
/// <param name="LetGo">Raw readings that were let go.</param>
/// <param name="Minutes">Minutes that are there.</param>
/// <param name="ReadingsADay">Readings a day over the last week, or since the first where that is shorter.</param>
/// <param name="MinutesADay">Minutes a day with a reading, of all series, over the same time.</param>
/// <param name="Days">Days since the first reading.</param>
public sealed record RecordSize(long Bytes, long FreeBytes, IReadOnlyList<TableSize> Tables, long Readings, long LetGo, long Minutes, double ReadingsADay, double MinutesADay, double Days);

/// <summary>What a table takes up.</summary>
public sealed record TableSize(string Name, long Bytes);
