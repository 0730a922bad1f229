using System.Globalization;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Pumps;

/// <summary>The small tables of recorded dosing: pools with their pumps, and tests by hand. Plain comma-separated values without quotes, columns found by their names.</summary>
internal static class PumpTables
{
    private static readonly string[] OfPlant =
        ["pool", "volume_m3", "alkalinity", "turnover_h", "acid_strength_eq_per_l", "acid_ml_per_stroke", "chlorine_strength_g_per_l", "chlorine_ml_per_stroke"];

    /// <summary>A test of free chlorine.</summary>
    public readonly record struct Test(Instant At, double FreeChlorine);

    /// <summary>The pools in the order of the table.</summary>
    public static Dictionary<string, PumpedPool> Pools(string folder, BadRows bad)
    {
        var pools = new Dictionary<string, PumpedPool>(StringComparer.Ordinal);
        foreach (var (line, row, fields) in Rows(folder, "plant.csv", OfPlant))
        {
            var figures = fields.Skip(1).Select(Positive).ToArray();
            if (fields[0].Length == 0 || Array.Exists(figures, f => f is null)) bad.Name("plant.csv", line, row, "not a pool with figures above nil");
            else if (!pools.TryAdd(fields[0], Pool([.. figures.Select(f => f!.Value)]))) bad.Name("plant.csv", line, row, "stands there twice");
        }

        return pools;
    }

    /// <summary>Tests of free chlorine by pool, in the order of time. Those of pH are not wanted here.</summary>
    public static Dictionary<string, List<Test>> Tests(string folder, Dictionary<string, PumpedPool> pools, BadRows bad)
    {
        var tests = pools.Keys.ToDictionary(p => p, _ => new List<Test>(), StringComparer.Ordinal);
        foreach (var (line, row, fields) in Rows(folder, "checks.csv", ["time", "pool", "quantity", "value"]))
        {
            if (!Instant.TryParse(fields[0], out var at)) bad.Name("checks.csv", line, row, "no time");
            else if (!tests.TryGetValue(fields[1], out var ofPool)) bad.Name("checks.csv", line, row, "of no pool of plant.csv");
            else if (fields[2] is not ("ph" or "free_chlorine")) bad.Name("checks.csv", line, row, "no quantity");
            else if (Figure(fields[3]) is not (>= 0 and < 100 and var value)) bad.Name("checks.csv", line, row, "no value that a test can give");
            else if (fields[2] == "free_chlorine") ofPool.Add(new(at, value));
        }

        foreach (var pool in tests.Keys.ToArray()) tests[pool] = [.. tests[pool].OrderBy(t => t.At)];
        return tests;
    }

    /// <summary>A finite number; null when it is none.</summary>
    public static double? Figure(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    private static double? Positive(string text) => Figure(text) is > 0 and var number ? number : null;

    private static PumpedPool Pool(double[] f) => new(f[0], f[1], f[2], new DosingPump(f[4], f[3]), new DosingPump(f[6], f[5]));

    private static IEnumerable<(long Line, string Row, string[] Fields)> Rows(string folder, string file, string[] columns)
    {
        int[]? places = null;
        var line = 0L;
        foreach (var row in File.ReadLines(Path.Combine(folder, file)))
        {
            line++;
            var found = row.TrimStart('\uFEFF').Split(',');
            if (places is null) places = [.. columns.Select(c => Array.IndexOf(found, c) is >= 0 and var at ? at : throw new FormatException($"{file} lacks the column {c}"))];
            else if (row.Length > 0) yield return (line, row, [.. places.Select(p => p < found.Length ? found[p].Trim() : "")]);
        }

        if (places is null) throw new FormatException($"{file} is empty");
    }
}
