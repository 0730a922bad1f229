using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Paper.Model;

/// <summary>Whole days on the site's clock, of 23, 24 or 25 hours each.</summary>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day, included.</param>
/// <param name="Starts">The start of each day, and that of the day behind the last.</param>
/// <param name="Zone">The site's zone.</param>
internal sealed record SheetSpan(DateOnly First, DateOnly Last, IReadOnlyList<Instant> Starts, TimeZoneInfo Zone)
{
    /// <summary>Start, included.</summary>
    public Instant From => Starts[0];

    /// <summary>End, excluded.</summary>
    public Instant To => Starts[^1];

    /// <summary>How many days.</summary>
    public int Days => Starts.Count - 1;

    /// <summary>It is a single day, and a time of day says when.</summary>
    public bool IsOneDay => Days == 1;

    /// <summary>Hours of the whole span as they pass.</summary>
    public double Hours => (To - From).TotalHours;

    /// <summary>The days from one to another.</summary>
    public static SheetSpan Of(DateOnly first, DateOnly last, TimeZoneInfo zone) =>
        new(first, last, [.. Enumerable.Range(0, last.DayNumber - first.DayNumber + 2).Select(i => Api.SiteMonth.Midnight(first.AddDays(i), zone))], zone);

    /// <summary>True for a moment of the span.</summary>
    public bool Holds(Instant at) => at >= From && at < To;

    /// <summary>The moment on the site's clock.</summary>
    public DateTimeOffset Local(Instant at) => TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), Zone);

    /// <summary>The moment as people read it: the time alone on a sheet of one day; with its offset in the hour that comes twice.</summary>
    public string Say(Instant at)
    {
        var local = Local(at);
        var text = local.ToString(IsOneDay && Holds(at) ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return Zone.IsAmbiguousTime(local.DateTime) ? $"{text} {local.ToString("zzz", CultureInfo.InvariantCulture)}" : text;
    }

    /// <summary>ISO 8601 with the site's offset.</summary>
    public string Iso(Instant at) => Local(at).ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
}
