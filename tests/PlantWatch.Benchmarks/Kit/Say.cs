using System.Globalization;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Figures in words: three digits are what a shared machine can vouch for.</summary>
internal static class Say
{
    public static string Number(double value)
    {
        if (double.IsNaN(value)) return "-";
        if (value == 0) return "0";
        var digits = (int)Math.Floor(Math.Log10(Math.Abs(value))) + 1;
        var step = Math.Pow(10, digits - 3);
        return digits >= 3
            ? (Math.Round(value / step) * step).ToString("#,0", CultureInfo.InvariantCulture)
            : value.ToString("F" + Math.Clamp(3 - digits, 1, 4), CultureInfo.InvariantCulture);
    }

    public static string Ratio(double value) => value >= 100 ? Number(value) : value.ToString(value >= 10 ? "F0" : value >= 0.1 ? "F2" : "F4", CultureInfo.InvariantCulture);

    public static string Spread(IReadOnlyList<double> values) =>
        values.Count == 1 ? Number(values[0]) : $"{Number(Percentile.Median(values))} ({Number(values.Min())} to {Number(values.Max())})";

    public static string Tails(IReadOnlyList<double> values) =>
        $"median {Number(Percentile.Median(values))}, p99 {Number(Percentile.Of(values, 0.99))}, worst {Number(values.Max())}";
}
