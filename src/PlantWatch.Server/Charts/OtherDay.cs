using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Charts;

/// <summary>Moments moved by whole days of the site's calendar: a day of 23 or 25 hours is one day.</summary>
/// <remarks>The pages do the same, so that a picture that is taken away shows what was seen.</remarks>
internal sealed class OtherDay(TimeZoneInfo zone, int days)
{
    /// <summary>The line of another day under the clock of this one. What stood at a time that this day's clock never shows breaks it.</summary>
    public IReadOnlyList<SeriesPoint> Laid(IReadOnlyList<SeriesPoint> points)
    {
        var laid = new List<SeriesPoint>(points.Count);
        foreach (var point in points)
        {
            var at = Later(point.At);
            if (at is { } moved && (laid.Count == 0 || moved > laid[^1].At)) laid.Add(point with { At = moved });
            else if (laid.Count > 0 && !laid[^1].IsGap) laid.Add(SeriesPoint.Gap(laid[^1].At));
        }

        return laid;
    }

    /// <summary>The moment of the other day that lies under one of this day; for the ends of a picture, which must be somewhere.</summary>
    public Instant Earlier(Instant at) => Moved(at, -days) ?? Instant.From(at.ToDateTimeOffset().AddDays(-days));

    private Instant? Later(Instant at) => Moved(at, days);

    // The second time round of an hour that comes twice lies where the first one does already.
    private Instant? Moved(Instant at, int by)
    {
        var here = TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), zone);
        if (zone.IsAmbiguousTime(here.DateTime) && here.Offset != First(here.DateTime)) return null;
        var there = here.DateTime.AddDays(by);
        if (zone.IsInvalidTime(there)) return null;
        return Instant.From(new DateTimeOffset(there, zone.IsAmbiguousTime(there) ? First(there) : zone.GetUtcOffset(there)));
    }

    private TimeSpan First(DateTime ambiguous) => zone.GetAmbiguousTimeOffsets(ambiguous).Max();
}
