using System.Globalization;

namespace PlantWatch.Server.Words;

/// <summary>A length of time as people say it: seconds up to two minutes, minutes up to two hours, hours up to two days, days beyond.</summary>
internal static class Spans
{
    // The length from which the next unit is used, the seconds in the unit, its word and the figure's format.
    private static readonly (double Below, double Unit, string Word, string Format)[] Ladder =
    [
        (120, 1, "second", "0"),
        (7200, 60, "minute", "0"),
        (172_800, 3600, "hour", "0.#"),
        (double.PositiveInfinity, 86_400, "day", "0.#"),
    ];

    /// <summary>So many seconds in words.</summary>
    public static string Of(double seconds, Wording words)
    {
        var (_, unit, word, format) = Ladder.First(step => Math.Round(seconds) < step.Below);
        var figure = (seconds / unit).ToString(format, CultureInfo.InvariantCulture);
        return $"{words.Language.Write(figure)} {words.Find(figure == "1" ? $"span.{word}" : $"span.{word}s")}";
    }
}
