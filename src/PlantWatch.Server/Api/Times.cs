using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>Times in addresses.</summary>
internal static class Times
{
    /// <summary>The longest range of a series or a chart.</summary>
    public static readonly TimeSpan LongestRange = TimeSpan.FromDays(366 * 20);

    // Calendars and charts reckon a day or a month beyond what is asked for, and can do so neither in the year 1 nor in the year 9999.
    private static readonly Instant Earliest = Instant.FromUtc(1900, 1, 1);
    private static readonly Instant Latest = Instant.FromUtc(2200, 1, 1);

    /// <summary>False for a time so far off that nothing can be reckoned around it; no plant has one.</summary>
    public static bool IsReckonable(Instant at) => at >= Earliest && at <= Latest;

    /// <summary>A range whose ends may be left out, which then are open. Gives the objection to an end that is no time; null when there is none.</summary>
    public static IResult? Open(string? from, string? to, out Instant start, out Instant end)
    {
        (start, end) = (Instant.Never, Instant.Never);
        if (!string.IsNullOrEmpty(from) && !Instant.TryParse(from, out start)) return Answers.Invalid("from", "field.time");
        return !string.IsNullOrEmpty(to) && !Instant.TryParse(to, out end) ? Answers.Invalid("to", "field.time") : null;
    }

    /// <summary>A range with both ends. Gives the objection; null when there is none.</summary>
    public static IResult? Range(string from, string to, out Instant start, out Instant end)
    {
        end = Instant.Never;
        if (!Instant.TryParse(from, out start) || start < Earliest || start > Latest) return Answers.Invalid("from", "field.time");
        return !Instant.TryParse(to, out end) || end <= start || end > Latest || end - start > LongestRange ? Answers.Invalid("to", "field.time_range") : null;
    }
}
