using System.Collections.Immutable;
using System.Globalization;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>How well the alarms of a month could be answered.</summary>
internal static class AlarmHealthApi
{
    // What stands when the month begins was raised before it.
    private static readonly TimeSpan Before = TimeSpan.FromDays(62);

    public static void MapAlarmHealth(this RouteGroupBuilder api) =>
        api.MapGet("/alarm-health", GetAsync).Produces<AlarmHealthView>().Produces<Problem>(StatusCodes.Status400BadRequest);

    private static async Task<IResult> GetAsync(string? month, double? people, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        var zone = SiteMonth.ZoneOf(host);
        var now = clock.GetUtcNow();
        if (!SiteMonth.TryOf(month ?? SiteMonth.Running(zone, now), zone, out var first, out var starts)) return Answers.Invalid("month", "health.month");
        if (people is not (null or (> 0 and <= 100))) return Answers.Invalid("people", "health.people");
        var to = Instant.Earlier(starts[^1], Instant.From(now));
        if (to <= starts[0]) return Answers.Invalid("month", "health.month");
        // A mean is over the time that somebody listened: a record that began on the twentieth has no quiet nineteen days before.
        var from = Instant.Later(starts[0], await BeganAsync(host, store, cancellation));
        if (to <= from) return Answers.Invalid("month", "health.nothing_recorded");
        ImmutableArray<Instant> days = [.. starts.Take(starts.Length - 1).Where(d => d < to)];
        var changes = new List<AlarmHappening>();
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["alarm"], null, from - Before, to, int.MaxValue), cancellation))
                if (row.Body is AlarmEntry entry) changes.Add(AlarmHappening.Of(row.HappenedAt, entry.Alarm, entry.Change));
        changes.Reverse();
        var health = AlarmHealth.Of(changes, from, to, people ?? 1, days);
        var view = AlarmHealthViews.Of(
            health, first.ToString("yyyy-MM", CultureInfo.InvariantCulture), [.. days.Zip(health.ByDay, (day, count) => new HealthDay(day, count))], host.Circuits.ToArray().Select(w => w.State.Plan), Reader.Words);
        return Answers.Ok(view);
    }

    // The first thing that a record holds is the plant file's coming into force.
    private static async Task<Instant> BeganAsync(PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var began = Instant.Never;
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["plan"], Limit: int.MaxValue), cancellation))
                began = began.IsSet ? Instant.Earlier(began, row.HappenedAt) : row.HappenedAt;
        return began;
    }
}
