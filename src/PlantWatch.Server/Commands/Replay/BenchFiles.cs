using System.Globalization;
using System.Text;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The tables of a recorded plant: plain comma-separated values without quotes, times in ISO 8601 UTC, a pool after the other.</summary>
internal static class BenchFiles
{
    /// <summary>One probe of a recorded plant.</summary>
    public sealed record Probe(string Pool, string Id, string Kind);

    /// <summary>A change of the sample-cell flow.</summary>
    public sealed record Flow(Instant At, string Pool, bool Runs);

    /// <summary>A service: the probe was cleaned and calibrated.</summary>
    public sealed record Service(Instant At, string Probe);

    /// <summary>One tested quantity.</summary>
    public sealed record Test(Instant SampledAt, Instant EnteredAt, string Pool, string Quantity, double Value, string Method);

    public static IEnumerable<Probe> Probes(string folder) => Rows(folder, "plant.csv", 3).Select(f => new Probe(f[0], f[1], f[2]));

    public static IEnumerable<Flow> Flows(string folder) => Rows(folder, "flow.csv", 3).Select(f => new Flow(Time(f[0]), f[1], f[2] switch { "1" => true, "0" => false, var other => throw new FormatException($"flow.csv: \"{CsvTable.Short(other)}\" is neither 1 nor 0") }));

    public static IEnumerable<Service> Services(string folder) => Rows(folder, "services.csv", 3).Select(f => new Service(Time(f[0]), f[1]));

    public static IEnumerable<Test> Tests(string folder) =>
        Rows(folder, "checks.csv", 7).Select(f => new Test(Time(f[0]), Time(f[1]), f[2], f[3], Number(f[4]), f[6]));

    /// <summary>A time such as 2025-03-01T07:20:00Z.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static Instant Time(string text) => Instant.TryParse(text, out var at) ? at : throw new FormatException($"\"{text}\" is no time");

    /// <summary>The same from the bytes of a large table, where whole seconds in UTC are the rule.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static Instant Time(ReadOnlySpan<byte> text)
    {
        if (text is not [_, _, _, _, (byte)'-', _, _, (byte)'-', _, _, (byte)'T', _, _, (byte)':', _, _, (byte)':', _, _, (byte)'Z']) return Time(Encoding.UTF8.GetString(text));
        var (year, month, day) = ((100 * Pair(text)) + Pair(text[2..]), Pair(text[5..]), Pair(text[8..]));
        var (hour, minute, second) = (Pair(text[11..]), Pair(text[14..]), Pair(text[17..]));
        return year >= 1 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month) && hour is >= 0 and < 24 && minute is >= 0 and < 60 && second is >= 0 and < 60
            ? Instant.FromUtc(year, month, day, hour, minute, second) : Time(Encoding.UTF8.GetString(text));
    }

    // Two digits; far below zero when they are none.
    private static int Pair(ReadOnlySpan<byte> text) => char.IsAsciiDigit((char)text[0]) && char.IsAsciiDigit((char)text[1]) ? ((text[0] - '0') * 10) + text[1] - '0' : -100_000;

    private static double Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
        ? number : throw new FormatException($"checks.csv: \"{CsvTable.Short(text)}\" is no number");

    private static IEnumerable<string[]> Rows(string folder, string file, int fields) => File.ReadLines(Path.Combine(folder, file)).Skip(1).Where(l => l.Length > 0)
        .Select(l => l.Split(',') is var found && found.Length >= fields ? found : throw new FormatException($"{file}: \"{CsvTable.Short(l)}\" has fewer than {fields} fields"));
}
