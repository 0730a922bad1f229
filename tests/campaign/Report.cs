using System.Globalization;
using System.Runtime.InteropServices;

namespace PlantWatch.Campaign;

/// <summary>The findings as a table that people read, on the screen and in docs/campaigns.md.</summary>
internal static class Report
{
    public const string Head = """
        | broker | kills (mid-stream, starting, stopping, at birth) | numbers said | a second | acknowledged | missing | doubled | out of order | known again | sums close | integrity | states agree | ready again, median and longest |
        |---|---|---|---|---|---|---|---|---|---|---|---|---|
        """;

    public static string Row(Findings f)
    {
        var kills = string.Join(", ", Enum.GetValues<Blow>().Select(b => Number(f.Blows.GetValueOrDefault(b))));
        TimeSpan[] restarts = [.. f.Restarts.Order()];
        string[] cells =
        [
            f.Options.Mode.ToString().ToLowerInvariant() + (f.Options.BrokerToo ? ", killed too" : "") + (f.Options.CatchesUp ? "" : ", never caught up"), $"{f.Blows.Values.Sum()} ({kills})", Number(f.Said), Number((long)(f.Said / f.Spoke.TotalSeconds)), Number(f.Acknowledged),
            Number(f.Tally.Missing), Number(f.Tally.Doubled), Number(f.Tally.OutOfOrder), Number(f.Sums.Duplicates), f.Sums.Close ? "yes" : "NO", f.Integrity, f.StatesAgree ? "yes" : "NO",
            $"{Seconds(restarts[restarts.Length / 2])}, {Seconds(restarts[^1])}",
        ];
        return $"| {string.Join(" | ", cells)} |";
    }

    /// <summary>Adds a dated table to the page.</summary>
    public static void Keep(IReadOnlyList<string> rows, DateTimeOffset at)
    {
        var file = Path.Combine(Programs.Repository, "docs", "campaigns.md");
        var machine = $"{Environment.ProcessorCount} cores, {RuntimeInformation.OSDescription}, .NET {Environment.Version}";
        File.AppendAllText(file, $"\n## {at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC\n{machine}\n\n{Head}\n{string.Join('\n', rows)}\n");
    }

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture).Replace(',', ' ');

    private static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) + " s";
}
