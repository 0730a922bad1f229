using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Charts;

/// <summary>Cuts a series into unbroken runs: nothing is ever drawn across a gap.</summary>
internal static class Runs
{
    /// <summary>One unbroken stretch.</summary>
    /// <param name="X">Seconds from the left edge.</param>
    /// <param name="Low">Lowest raw value of each point.</param>
    /// <param name="Mean">Mean raw value.</param>
    /// <param name="High">Highest raw value.</param>
    /// <param name="Corrected">Corrected mean; null when the run has none.</param>
    internal sealed record Run(double[] X, double[] Low, double[] Mean, double[] High, double[]? Corrected)
    {
        /// <summary>Some point stands for more than one value.</summary>
        public bool HasEnvelope { get; } = Enumerable.Range(0, Low.Length).Any(i => High[i] > Low[i]);
    }

    /// <summary>The runs of a line, in order. A change between corrected and not corrected also ends a run.</summary>
    public static IEnumerable<Run> Of(StripLine line, Instant from)
    {
        var points = line.Series.Points;
        if (line.Corrected is { } all && all.Count != points.Count)
            throw new ArgumentException($"series {line.Series.Series}: {points.Count} points, but {all.Count} corrected values", nameof(line));
        var start = 0;
        for (var i = 0; i <= points.Count; i++)
        {
            if (i < points.Count && !points[i].IsGap && (i == start || HasCorrection(line, i) == HasCorrection(line, i - 1))) continue;
            if (i > start) yield return Cut(line, from, start, i);
            start = i < points.Count && !points[i].IsGap ? i : i + 1;
        }
    }

    private static bool HasCorrection(StripLine line, int i) => line.Corrected?[i] is not null;

    private static Run Cut(StripLine line, Instant from, int start, int end)
    {
        SeriesPoint[] points = [.. line.Series.Points.Skip(start).Take(end - start)];
        return new(
            [.. points.Select(p => (p.At - from).TotalSeconds)], [.. points.Select(p => p.Min)], [.. points.Select(p => p.Mean)], [.. points.Select(p => p.Max)],
            HasCorrection(line, start) ? [.. line.Corrected!.Skip(start).Take(end - start).Select(v => v!.Value)] : null);
    }
}
