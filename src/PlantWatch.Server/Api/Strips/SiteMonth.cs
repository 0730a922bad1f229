using System.Collections.Immutable;
using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>A month on the site's clock, day by day.</summary>
internal static class SiteMonth
{
    /// <summary>The site's time zone.</summary>
    public static TimeZoneInfo ZoneOf(PlantHost host) => TimeZoneInfo.TryFindSystemTimeZoneById(host.Plan?.Site.TimeZone ?? "UTC", out var found) ? found : TimeZoneInfo.Utc;

    /// <summary>The site's day at an instant.</summary>
    public static DateOnly DayOf(PlantPlan plan, Instant at) => DayOf(plan.Site.TimeZone, at);

    /// <summary>The day at an instant in a time zone.</summary>
    public static DateOnly DayOf(string timeZone, Instant at) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), TimeZoneInfo.TryFindSystemTimeZoneById(timeZone, out var zone) ? zone : TimeZoneInfo.Utc).DateTime);

    /// <summary>The month of now.</summary>
    public static string Running(TimeZoneInfo zone, DateTimeOffset now) => TimeZoneInfo.ConvertTime(now, zone).ToString("yyyy-MM", CultureInfo.InvariantCulture);

    /// <summary>The starts of its days, and that of the next month behind them; false for what is no month.</summary>
    public static bool TryOf(string? month, TimeZoneInfo zone, out DateOnly first, out ImmutableArray<Instant> starts)
    {
        starts = [];
        if (!DateOnly.TryParseExact($"{month}-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out first) || first.Year is < 2000 or > 9000) return false;
        var day = first;
        starts = [.. Enumerable.Range(0, DateTime.DaysInMonth(first.Year, first.Month) + 1).Select(i => Midnight(day.AddDays(i), zone))];
        return true;
    }

    /// <summary>The start of a day. Where the clock leaps over midnight the day begins with its first moment; where midnight comes twice, with the first.</summary>
    public static Instant Midnight(DateOnly day, TimeZoneInfo zone)
    {
        var at = day.ToDateTime(TimeOnly.MinValue);
        while (zone.IsInvalidTime(at)) at = at.AddMinutes(15);
        return Instant.From(new DateTimeOffset(at, zone.IsAmbiguousTime(at) ? zone.GetAmbiguousTimeOffsets(at).Max() : zone.GetUtcOffset(at)));
    }
}
