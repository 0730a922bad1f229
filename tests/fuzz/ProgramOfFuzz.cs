using System.Globalization;
using System.Runtime.InteropServices;
using PlantWatch.Campaign;

namespace PlantWatch.Fuzz;

/// <summary>The long form: so many mutations a decoder, a row each, and a dated table on the page of campaigns.</summary>
internal static class ProgramOfFuzz
{
    public const string Usage = "tests/campaign/fuzz [--mutations 10000000] [--seed 1] [--decoder \"SenML CBOR\"] [--no-page]";

    private const string Head = """
        | decoder | mutations (over 32 KiB) | seed | a second | readings | refused, a reason at a time | broken | dearest payload: allocated, its length | most of what its length allows | through the fold: received = stored + duplicate + refused |
        |---|---|---|---|---|---|---|---|---|---|
        """;

    public static int Run(string[] args)
    {
        var (mutations, seed, targets, page, sparkplug) = (10_000_000L, 1, Target.All, true, true);
        for (var i = 0; i < args.Length; i++)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            if (args[i] == "--no-page") page = false;
            else if (args[i] == "--mutations" && long.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out mutations)) i++;
            else if (args[i] == "--seed" && int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out seed)) i++;
            else if (args[i] == "--decoder" && Target.All.Where(t => t.Name == value).ToArray() is { Length: 1 } one) (targets, sparkplug, i) = (one, false, i + 1);
            else if (args[i] == "--decoder" && value == SparkplugHunt.Name) (targets, i) = ([], i + 1);
            else return Complain();
        }

        Console.WriteLine(Head);
        List<string> rows = [];
        var broken = 0L;
        foreach (var target in targets)
        {
            var found = new Hunt(target, seed).Run(mutations, done => Console.Error.WriteLine($"{target.Name}: {Number(done)}"));
            rows.Add(Row(found, seed));
            Console.WriteLine(rows[^1]);
            foreach (var sample in found.Samples) Console.WriteLine($"  BROKEN: {sample}");
            broken += found.Broken;
        }

        if (sparkplug) broken += RunSparkplug(mutations, seed, rows);
        if (page) Keep(rows);
        return broken == 0 ? 0 : 1;
    }

    // It has a session of its own and not yet a place in the fold of a circuit: the last two cells say what the session made of it.
    private static long RunSparkplug(long mutations, int seed, List<string> rows)
    {
        var c = new SparkplugHunt(seed).Run(mutations, done => Console.Error.WriteLine($"{SparkplugHunt.Name}: {Number(done)}"));
        var refused = string.Join(", ", c.Refused.OrderBy(r => r.Key).Select(r => $"{r.Key} {Number(r.Value)}"));
        var notes = string.Join(", ", c.Notes.OrderBy(n => n.Key).Select(n => $"{n.Key} {Number(n.Value)}"));
        string[] cells =
        [
            SparkplugHunt.Name, Number(c.Mutations), $"{seed}", Number((long)(c.Mutations / c.Took.TotalSeconds)), Number(c.Readings), refused, Number(c.Broken),
            $"{Number(c.Dearest.Allocated)} B, {Number(c.Dearest.Length)} B", (c.MostOfAllowed * 100).ToString("0", CultureInfo.InvariantCulture) + " %", notes,
        ];
        rows.Add($"| {string.Join(" | ", cells)} |");
        Console.WriteLine(rows[^1]);
        foreach (var sample in c.Samples) Console.WriteLine($"  BROKEN: {sample}");
        return c.Broken;
    }

    private static string Row(Catch c, int seed)
    {
        var refused = string.Join(", ", c.Refused.OrderBy(r => r.Key).Select(r => $"{r.Key} {Number(r.Value)}"));
        string[] cells =
        [
            c.Target.Name, $"{Number(c.Mutations)} ({Number(c.Large)})", $"{seed}", Number((long)(c.Mutations / c.Took.TotalSeconds)), Number(c.Readings), refused, Number(c.Broken),
            $"{Number(c.Dearest.Allocated)} B, {Number(c.Dearest.Length)} B", (c.MostOfAllowed * 100).ToString("0", CultureInfo.InvariantCulture) + " %",
            $"{Number(c.Ledger.Received)} = {Number(c.Ledger.Stored)} + {Number(c.Ledger.Duplicates)} + {Number(c.Ledger.Refused)}",
        ];
        return $"| {string.Join(" | ", cells)} |";
    }

    private static void Keep(List<string> rows)
    {
        var file = Path.Combine(Programs.Repository, "docs", "campaigns.md");
        var machine = $"{Environment.ProcessorCount} cores, {RuntimeInformation.OSDescription}, .NET {Environment.Version}";
        var at = TimeProvider.System.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        File.AppendAllText(file, $"\n## Fuzz, {at} UTC\n{machine}\n\n{Head}\n{string.Join('\n', rows)}\n");
    }

    private static int Complain()
    {
        Console.Error.WriteLine(Usage);
        return 2;
    }

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture).Replace(',', ' ');
}
