using PlantWatch.Core.Statistics;
using PlantWatch.Core.Tests.Chemistry;

namespace PlantWatch.Core.Tests.Statistics;

/// <summary>The published data sets that lie beside these tests.</summary>
internal static class Figures
{
    public static XyPoint[] Points(string file, string x, string y) =>
        [.. ReferenceRows.Of("Statistics", file).Select(row => new XyPoint(row.Number(x), row.Number(y)))];

    /// <summary>The expected figures of a check value, in the order they are printed.</summary>
    public static double[] Expected(string id)
    {
        var row = ReferenceRows.Of("Statistics", "check_values.csv").Single(r => r["id"] == id);
        return [.. System.Text.RegularExpressions.Regex.Matches(row["expected"].Split('(')[0], @"-?\d+\.?\d*").Select(m => double.Parse(m.Value, System.Globalization.CultureInfo.InvariantCulture))];
    }
}
