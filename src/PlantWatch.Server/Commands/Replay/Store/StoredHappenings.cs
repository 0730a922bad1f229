using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>What people did, as the record tells it: checks and calibrations, at the time they were entered. Calibrations are asked for without a beginning, since an old one may hold still.</summary>
internal static class StoredHappenings
{
    // A check may be typed in long after its sample.
    private static readonly TimeSpan TypedLate = TimeSpan.FromDays(366);

    /// <summary>Oldest first; what was entered before the start is there at the start when it is a calibration, and not at all when it is a check.</summary>
    public static IReadOnlyList<(Instant At, EntryBody Body)> Of(SqliteArchive archive, PartitionKey partition, Instant start, Instant to)
    {
        var checks = archive.Entries(partition, new EntryQuery(["check"], From: start - TypedLate, To: to, Limit: int.MaxValue)).Where(e => e.At >= start);
        var calibrations = archive.Entries(partition, new EntryQuery(["calibration"], Limit: int.MaxValue));
        return [.. checks.Concat(calibrations).Where(e => e.At < to).OrderBy(e => e.At).ThenBy(e => e.Id).Select(e => (Instant.Later(e.At, start), e.Body))];
    }

    /// <summary>When the record of a circuit begins: its first plan came into force.</summary>
    public static Instant Beginning(SqliteArchive archive, PartitionKey partition) =>
        archive.Entries(partition, new EntryQuery(["plan"], Limit: int.MaxValue)).Select(e => e.At).DefaultIfEmpty(Instant.Never).Min();

    /// <summary>The event that made a row of the record.</summary>
    /// <param name="body">The row.</param>
    /// <param name="now">When it is entered now.</param>
    /// <param name="windows">Reads what the probes did around a check.</param>
    public static PlantEvent? Event(EntryBody body, Instant now, Func<ManualCheck, System.Collections.Immutable.ImmutableArray<ProbeWindow>> windows) => body switch
    {
        CheckEntry said => new CheckEntered(now, said.Check, windows(said.Check)),
        CalibrationEntry { Calibration: { Status: CalibrationStatus.Proposed } proposed } => new CalibrationProposed(now, proposed),
        CalibrationEntry { Calibration: var decided } => new CalibrationDecided(now, decided.Id, decided.Status, decided.HoldsFrom, decided.DecidedBy ?? "", decided.Decision),
        _ => null,
    };
}
