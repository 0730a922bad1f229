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
        var zone = TimeZoneInfo.TryFindSystemTimeZoneById(host.Plan?.Site.TimeZone ?? "UTC", out var found) ? found : TimeZoneInfo.Utc;
        var now = clock.GetUtcNow();
        var here = TimeZoneInfo.ConvertTime(now, zone);
        if (!DateOnly.TryParseExact($"{month ?? here.ToString("yyyy-MM", CultureInfo.InvariantCulture)}-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first)
            || first.Year is < 2000 or > 9000)
            return Answers.Invalid("month", "health.month");
        if (people is not (null or (> 0 and <= 100))) return Answers.Invalid("people", "health.people");
        ImmutableArray<Instant> starts = [.. Enumerable.Range(0, DateTime.DaysInMonth(first.Year, first.Month) + 1).Select(i => Midnight(first.AddDays(i), zone))];
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
            health, first.ToString("yyyy-MM", CultureInfo.InvariantCulture), [.. days.Zip(health.ByDay, (day, count) => new HealthDay(day, count))], host.Circuits.ToArray().Select(w => w.State.Plan), Wording.English);
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

    // Where the clock leaps over midnight the day begins with its first moment.
    private static Instant Midnight(DateOnly day, TimeZoneInfo zone)
    {
        var at = day.ToDateTime(TimeOnly.MinValue);
        while (zone.IsInvalidTime(at)) at = at.AddMinutes(15);
        return Instant.From(new DateTimeOffset(at, zone.GetUtcOffset(at)));
    }
}
