using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>What would have been said against what was said: a table of the differences, and a few words.</summary>
internal static class ComparisonSheet
{
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture) { NewLine = "\n" };

    /// <summary>Writes comparison.csv: the differences in the order of time.</summary>
    public static void Write(string path, IEnumerable<Difference> differences)
    {
        using var csv = new CsvWriter(new StreamWriter(path), Format);
        Row(csv, "kind", "subject", "what", "change", "live_at", "replayed_at", "minutes", "live", "replayed");
        foreach (var d in differences.Where(d => d.Change != Change.Same).OrderBy(d => d.At).ThenBy(d => d.Kind, StringComparer.Ordinal).ThenBy(d => d.Subject, StringComparer.Ordinal))
            Row(csv, d.Kind, d.Subject, d.What, Word(d.Change), Time(d.LiveAt), Time(d.ReplayedAt), d.Minutes is { } by ? by.ToString("0.0", CultureInfo.InvariantCulture) : "", d.Live, d.Replayed);
    }

    /// <summary>Says how many there are of each kind.</summary>
    public static void Say(IReadOnlyList<Difference> all, TextWriter output)
    {
        foreach (var (kind, word) in ((string, string)[])[("verdict", "verdicts on checks"), ("flag", "probes flagged"), ("alarm", "alarms")])
        {
            var counts = Enum.GetValues<Change>().Select(c => (Change: c, Count: all.Count(d => d.Kind == kind && d.Change == c))).Where(c => c.Count > 0);
            output.WriteLine($"{word}: {(string.Join(", ", counts.Select(c => $"{c.Count} {(c.Change == Change.Same ? "the same" : Word(c.Change))}")) is { Length: > 0 } said ? said : "none on either side")}");
        }
    }

    private static string Word(Change change) => change.ToString().ToLowerInvariant();

    private static string Time(Instant at) => at.IsSet ? at.ToString() : "";

    private static void Row(CsvWriter csv, params ReadOnlySpan<string> fields)
    {
        foreach (var field in fields) csv.WriteField(field);
        csv.NextRecord();
    }
}
