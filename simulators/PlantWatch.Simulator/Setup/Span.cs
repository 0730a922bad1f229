using System.Globalization;

namespace PlantWatch.Simulator.Setup;

/// <summary>Durations as scenario files write them: <c>13d20h</c>, <c>90s</c>, <c>2h30m</c>.</summary>
internal static class Span
{
    /// <summary>Reads a duration; null for anything else.</summary>
    public static TimeSpan? TryRead(string text)
    {
        var total = TimeSpan.Zero;
        var digits = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsAsciiDigit(text[i])) continue;
            if (!int.TryParse(text.AsSpan(digits, i - digits), NumberStyles.None, CultureInfo.InvariantCulture, out var count)) return null;
            if (One(text[i]) is not { } unit) return null;
            total += unit * count;
            digits = i + 1;
        }
        return digits == text.Length && text.Length > 0 ? total : null;
    }

    /// <summary>Reads a duration that was checked before.</summary>
    public static TimeSpan Read(string text) => TryRead(text) ?? throw new FormatException($"'{text}' is no duration such as 2d6h30m");

    private static TimeSpan? One(char unit) => unit switch
    {
        'd' => TimeSpan.FromDays(1),
        'h' => TimeSpan.FromHours(1),
        'm' => TimeSpan.FromMinutes(1),
        's' => TimeSpan.FromSeconds(1),
        _ => null,
    };
}
