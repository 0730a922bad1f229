using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Charts;

/// <summary>Where the time axis is labelled: at round times of the site's clock, on days of 23 and 25 hours too.</summary>
internal static class TimeTicks
{
    private static readonly TimeSpan[] Steps =
    [
        TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(10), TimeSpan.FromMinutes(30),
        TimeSpan.FromHours(1), TimeSpan.FromHours(2), TimeSpan.FromHours(3), TimeSpan.FromHours(6), TimeSpan.FromHours(12),
        TimeSpan.FromDays(1), TimeSpan.FromDays(2), TimeSpan.FromDays(7), TimeSpan.FromDays(14),
    ];

    /// <summary>A labelled moment.</summary>
    internal readonly record struct Label(Instant At, string Text);

    /// <summary>At most <paramref name="most"/> labels between two instants, in order.</summary>
    public static IReadOnlyList<Label> Between(Instant from, Instant to, TimeZoneInfo zone, int most)
    {
        foreach (var step in Steps)
            if ((to - from) / step <= most) return [.. Regular(from, to, zone, step)];
        foreach (var months in (int[])[1, 2, 3, 6, 12])
            if ((to - from).TotalDays / 30.4 / months <= most) return [.. Months(from, to, zone, months)];
        return [.. Months(from, to, zone, 12 * (1 + (int)((to - from).TotalDays / 365 / most)))];
    }

    private static IEnumerable<Label> Regular(Instant from, Instant to, TimeZoneInfo zone, TimeSpan step)
    {
        var days = Math.Max(1, (int)step.TotalDays);
        var day = TimeZoneInfo.ConvertTime(from.ToDateTimeOffset(), zone).Date;
        // Weeks and fortnights begin on a Monday, wherever the picture begins. 0001-01-01 was one.
        if (days > 1) day = day.AddDays(-((day - DateTime.MinValue).Days % days));
        for (; ; day = day.AddDays(days))
            for (var time = TimeSpan.Zero; time < TimeSpan.FromDays(1); time += step)
            {
                if (At(day + time, zone) is not { } at) continue;
                if (at > to) yield break;
                if (at >= from) yield return new(at, (day + time).ToString(time == TimeSpan.Zero ? "d MMM" : "HH:mm", CultureInfo.InvariantCulture));
            }
    }

    private static IEnumerable<Label> Months(Instant from, Instant to, TimeZoneInfo zone, int months)
    {
        var start = TimeZoneInfo.ConvertTime(from.ToDateTimeOffset(), zone);
        for (var month = new DateTime(start.Year, 1, 1); ; month = month.AddMonths(months))
        {
            if (At(month, zone) is not { } at) continue;
            if (at > to) yield break;
            if (at >= from) yield return new(at, month.ToString("MMM yyyy", CultureInfo.InvariantCulture));
        }
    }

    // A time that the clock skips is not labelled, one that it shows twice is labelled the first time.
    private static Instant? At(DateTime local, TimeZoneInfo zone)
    {
        if (zone.IsInvalidTime(local)) return null;
        var offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return Instant.From(new DateTimeOffset(local, offset));
    }
}
