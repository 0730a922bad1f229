using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.History;

/// <summary>One act of a person, as a row of the record tells it.</summary>
/// <param name="At">When it is done again: when it entered the record, or the start for what was done before and holds still.</param>
/// <param name="Row">The row.</param>
internal readonly record struct RecordedAct(Instant At, RecordEntry Row);

/// <summary>What people did, out of the record: tests, calibrations, work on probes, doses, laboratory reports, confirmed rows of the limit pack, pool states, incidents, washes of filters, and what they did with alarms.</summary>
internal static class RecordedActs
{
    // A check may be typed in long after its sample.
    private static readonly TimeSpan TypedLate = TimeSpan.FromDays(366);

    private static readonly string[] InTheirTime = ["check", "dose", "work", "alarm", "incident", "filter_washed", "backwash", "fault", "reagent_opened", "instrument_verified", "laboratory", "laboratory_closed", "pool_state", "stock", "bathers"];

    // An old one may hold still, so that these are asked for without a beginning.
    private static readonly string[] HoldOn = ["calibration", "pack_row"];

    /// <summary>The kinds of rows that are acts, or can be.</summary>
    public static IEnumerable<string> Kinds => InTheirTime.Concat(HoldOn);

    /// <summary>Oldest first, from the start on; before them what was done earlier and holds still.</summary>
    public static IReadOnlyList<RecordedAct> Of(SqliteArchive archive, PartitionKey partition, Instant start, Instant to)
    {
        var lasting = archive.Entries(partition, new EntryQuery(HoldOn, Limit: int.MaxValue)).Where(e => e.At < to);
        var timed = archive.Entries(partition, new EntryQuery(InTheirTime, From: start - TypedLate, To: to + TypedLate, Limit: int.MaxValue)).Where(e => e.At < to && IsAct(e.Body)).ToArray();
        return
        [
            .. lasting.Concat(StillSo(timed.Where(e => e.At < start))).Concat(timed.Where(e => e.At >= start))
                .OrderBy(e => e.At).ThenBy(e => e.Id).Select(e => new RecordedAct(Instant.Later(e.At, start), e)),
        ];
    }

    /// <summary>When the record of a circuit begins: its first plan came into force.</summary>
    public static Instant Beginning(SqliteArchive archive, PartitionKey partition) =>
        archive.Entries(partition, new EntryQuery(["plan"], Limit: int.MaxValue)).Select(e => e.At).DefaultIfEmpty(Instant.Never).Min();

    // What the plant did by itself it does again by itself.
    private static bool IsAct(EntryBody body) => body switch
    {
        AlarmEntry said => said.By is not null,
        WorkEntry said => said.Change is WorkChange.Begun or WorkChange.Ended,
        BackwashEntry said => said.Change is BackwashChange.Begun or BackwashChange.GivenUp,
        IncidentEntry said => said.Change is IncidentChange.Declared or IncidentChange.Closed,
        PoolStateEntry said => !said.ByIncident,
        _ => true,
    };

    // How things stood when the start came: the last of each kind for each thing.
    private static IEnumerable<RecordEntry> StillSo(IEnumerable<RecordEntry> before)
    {
        var all = before.OrderBy(e => e.At).ThenBy(e => e.Id).ToArray();
        var (closed, returned) = (all.Select(e => e.Body).OfType<IncidentEntry>().Where(i => i.Change == IncidentChange.Closed).Select(i => i.Incident.Id).ToHashSet(), LastOfService(all));
        return
        [
            .. all.Where(e => e.Body is PoolStateEntry or FilterEntry).GroupBy(e => (e.Body.Kind, e.Subject)).Select(g => g.Last()),
            .. all.Where(e => e.Body is LabResultEntry or LabClosedEntry or JobEntry or ReagentEntry or InstrumentEntry or StockEntry),
            .. all.Where(e => e.Body is IncidentEntry { Change: IncidentChange.Declared } said && !closed.Contains(said.Incident.Id)),
            .. returned,
        ];
    }

    private static IEnumerable<RecordEntry> LastOfService(RecordEntry[] all) =>
        all.Where(e => e.Body is AlarmEntry { Change: AlarmChange.TakenOutOfService or AlarmChange.ReturnedToService }).GroupBy(e => ((AlarmEntry)e.Body).Alarm.Key)
            .Select(g => g.Last()).Where(e => e.Body is AlarmEntry { Change: AlarmChange.TakenOutOfService });
}
