using System.Globalization;

namespace PlantWatch.Server.Words;

/// <summary>A length of time as people say it: seconds up to two minutes, minutes up to two hours, hours up to two days, days beyond.</summary>
internal static class Spans
{
    // The length from which the next unit is used, the seconds in the unit, how it is written.
    private static readonly (double Below, double Unit, string Format)[] Ladder =
    [
        (120, 1, "0 'seconds'"),
        (7200, 60, "0 'minutes'"),
        (172_800, 3600, "0.# 'hours'"),
        (double.PositiveInfinity, 86_400, "0.# 'days'"),
    ];

    /// <summary>So many seconds in words.</summary>
    public static string Of(double seconds)
    {
        var (_, unit, format) = Ladder.First(step => Math.Round(seconds) < step.Below);
        var text = (seconds / unit).ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith("1 ", StringComparison.Ordinal) ? text[..^1] : text;
    }
}
