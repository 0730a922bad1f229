using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The rows that speak of a span and lie far from it: how pools were run and which jobs were in hand since long before, alarms raised long before of which something was said long after, and tests and doses that a correction moved to another date.</summary>
internal static class FurtherOff
{
    private static readonly string[] Lasting = ["pool_state", "fault", "job_effect"], Corrected = ["check", "dose"], Alarms = ["alarm"];

    /// <summary>A slip in a date is mostly one of the day, the month or the year.</summary>
    private static readonly TimeSpan Slip = TimeSpan.FromDays(366);

    /// <summary>Reads them.</summary>
    /// <param name="partition">The circuit.</param>
    /// <param name="span">The span.</param>
    /// <param name="from">Where the rows that are read anyway begin.</param>
    /// <param name="to">Where they end.</param>
    /// <param name="store">The record.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static async Task<IEnumerable<RecordEntry>> ReadAsync(PartitionKey partition, SheetSpan span, Instant from, Instant to, IRecordStore store, CancellationToken cancellation)
    {
        var lasting = await store.EntriesAsync(partition, new(Lasting, null, Instant.Never, from, int.MaxValue), cancellation);
        RecordEntry[] dated =
        [
            .. await store.EntriesAsync(partition, new(Corrected, null, span.From - Slip, from, int.MaxValue), cancellation),
            .. await store.EntriesAsync(partition, new(Corrected, null, to, span.To + Slip, int.MaxValue), cancellation),
        ];
        var alarms = await store.EntriesAsync(partition, new(Alarms, null, to, Instant.Never, int.MaxValue), cancellation);
        return [.. lasting, .. dated.Where(r => Corrects(r.Body)), .. alarms.Where(r => r.Body is AlarmEntry { Alarm.RaisedAt: { IsSet: true } raised } && raised < from)];
    }

    private static bool Corrects(EntryBody body) => body is CheckEntry { Check.Corrects: not null } or DoseEntry { Dose.Corrects: not null };
}
