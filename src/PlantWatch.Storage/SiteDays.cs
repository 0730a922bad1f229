using PlantWatch.Core.Quantities;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Storage;

/// <summary>Days of a site, from local midnight to local midnight.</summary>
public static class SiteDays
{
    /// <summary>The day that holds a moment.</summary>
    public static (Instant From, Instant To) Of(Instant moment, TimeZoneInfo zone)
    {
        var day = new SiteCalendar(zone).DayOf(moment.UnixMicroseconds);
        return (Instant.FromUnixMicroseconds(day.Start), Instant.FromUnixMicroseconds(day.End));
    }

    /// <summary>The days before the one that holds a moment, newest first.</summary>
    public static IEnumerable<(Instant From, Instant To)> Before(Instant moment, TimeZoneInfo zone, int days)
    {
        var day = Of(moment, zone);
        for (var i = 0; i < days; i++) yield return day = Of(day.From - TimeSpan.FromTicks(10), zone);
    }
}
