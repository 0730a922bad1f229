using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/storage : what the record takes up, measured at most an hour ago

/// <summary>What the record takes up and will.</summary>
/// <param name="MeasuredAt">When it was measured.</param>
/// <param name="Bytes">Size of the file.</param>
/// <param name="FreeBytes">Of it free, to be used again.</param>
/// <param name="Tables">By table; single readings (reading), minutes (rollup_minute) and the rest (other) by their usual size where the engine cannot tell.</param>
/// <param name="Readings">Single readings that are there.</param>
/// <param name="LetGo">Single readings that the retention let go.</param>
/// <param name="ReadingsADay">Over the last week.</param>
/// <param name="BytesADay">Growth now.</param>
/// <param name="BytesInAYear">Size in a year under the policy.</param>
/// <param name="DiskFreeBytes">Free on its disk.</param>
/// <param name="DaysLeft">Days until the disk is full; null when more than ten years.</param>
/// <param name="RawDays">Days for which single readings are kept; null for ever.</param>
/// <param name="MinuteDays">Days for which minutes are kept; null for ever.</param>
/// <param name="Gone">Where single readings were let go: before when, a circuit.</param>
/// <param name="BackupAt">Begin of the newest nightly backup; null when there is none.</param>
public sealed record StorageView(
    Instant MeasuredAt, long Bytes, long FreeBytes, IReadOnlyList<StorageTable> Tables, long Readings, long LetGo, double ReadingsADay, double BytesADay, double BytesInAYear,
    long DiskFreeBytes, double? DaysLeft, double? RawDays, double? MinuteDays, IReadOnlyList<StorageGone> Gone, Instant? BackupAt);

/// <summary>What a table takes up, its indexes among it.</summary>
public sealed record StorageTable(string Name, long Bytes);

/// <summary>Since when a circuit's single readings are there.</summary>
public sealed record StorageGone(string Circuit, Instant Before);
