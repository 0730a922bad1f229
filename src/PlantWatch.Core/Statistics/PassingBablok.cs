using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Statistics;

/// <summary>The straight line y = intercept + slope x by the median of all slopes between pairs of points: no single wild point moves it, and no error model is needed.</summary>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeWithin">Where the slope lies at 95 % confidence, by rank.</param>
/// <param name="Intercept">Intercept.</param>
/// <param name="InterceptWithin">Where the intercept lies at 95 % confidence.</param>
/// <param name="Count">Points.</param>
public sealed record PassingBablok(double Slope, ValueRange SlopeWithin, double Intercept, ValueRange InterceptWithin, int Count)
{
    /// <summary>More points than this are refused as a programmer's error: their pairs would fill memory.</summary>
    public const int Most = 2000;

    // Two-sided 95 % of the normal distribution.
    private const double Z = 1.9599639845400545;

    /// <summary>Fits the line (Passing and Bablok, J. Clin. Chem. Clin. Biochem. 21:709, 1983); five points at least, since fewer have no interval at 95 %.</summary>
    /// <remarks>Slopes of exactly -1 are dropped and the median is shifted by the number of slopes below -1. The limits of the slope are the medians of what is left when the
    /// C greatest, or C smallest, slopes are taken away: where two slopes stand in the middle their mean is taken, so that the limits join those of the usual open implementations.</remarks>
    /// <param name="points">The points, in any order.</param>
    public static Finding<PassingBablok> Of(ReadOnlySpan<XyPoint> points)
    {
        if (points.Length > Most) throw new ArgumentException($"at most {Most} points", nameof(points));
        if (Moments.LackOf(points, 5) is var lack && lack != Lack.Nothing) return new(lack);
        var (slopes, shift) = Slopes(points);
        var n = points.Length;
        var spread = (int)Math.Round(Z * Math.Sqrt(n * (n - 1.0) * ((2 * n) + 5) / 18), MidpointRounding.AwayFromZero);
        if (slopes.Length - spread < 2) return new(Lack.TooFew);
        var slope = Middle(slopes, 0, slopes.Length, shift);
        var (low, high) = (Middle(slopes, 0, slopes.Length - spread, shift), Middle(slopes, spread, slopes.Length, shift));
        if (!double.IsFinite(low) || !double.IsFinite(high) || slope <= 0) return new(Lack.NoTrend);
        return new(new PassingBablok(
            slope, new(low, high), MiddleLeft(points, slope), new(MiddleLeft(points, high), MiddleLeft(points, low)), n));
    }

    /// <summary>The line at x.</summary>
    public double At(double x) => Intercept + (Slope * x);

    private static (double[] Sorted, int Shift) Slopes(ReadOnlySpan<XyPoint> points)
    {
        var slopes = new List<double>(points.Length * (points.Length - 1) / 2);
        var below = 0;
        for (var i = 0; i < points.Length; i++)
            for (var j = i + 1; j < points.Length; j++)
            {
                var (dx, dy) = (points[j].X - points[i].X, points[j].Y - points[i].Y);
                // Two equal points have no slope; -1 would count on both sides.
                if ((dx == 0 && dy == 0) || dy == -dx) continue;
                var slope = dx == 0 ? (dy > 0 ? double.PositiveInfinity : double.NegativeInfinity) : dy / dx;
                if (slope < -1) below++;
                slopes.Add(slope);
            }

        slopes.Sort();
        return ([.. slopes], below);
    }

    // The median of sorted[from..to], moved up by the shift; beyond the end stand only steeper slopes, so infinity.
    private static double Middle(double[] sorted, int from, int to, int shift)
    {
        var (lower, upper) = (from + ((to - from - 1) / 2) + shift, from + ((to - from) / 2) + shift);
        return upper >= sorted.Length ? double.PositiveInfinity : (sorted[lower] + sorted[upper]) / 2;
    }

    private static double MiddleLeft(ReadOnlySpan<XyPoint> points, double slope)
    {
        var left = new double[points.Length];
        for (var i = 0; i < left.Length; i++) left[i] = points[i].Y - (slope * points[i].X);
        Array.Sort(left);
        return Middle(left, 0, left.Length, 0);
    }
}
