using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Statistics;

/// <summary>The straight line y = intercept + slope x where x and y both carry error and the ratio of their error variances is known.</summary>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeError">Its standard error by the jackknife; 0 for points on one line.</param>
/// <param name="Intercept">Intercept.</param>
/// <param name="InterceptError">Its standard error by the jackknife; 0 for points on one line.</param>
/// <param name="Count">Points.</param>
public sealed record Deming(double Slope, double SlopeError, double Intercept, double InterceptError, int Count)
{
    /// <summary>Fits the line in closed form (as in CLSI EP09); three points at least. The errors leave out one point at a time (Linnet's jackknife).</summary>
    /// <param name="points">The points, in any order.</param>
    /// <param name="ratio">Error variance of y over that of x; above 0.</param>
    public static Finding<Deming> Of(ReadOnlySpan<XyPoint> points, double ratio = 1)
    {
        if (!(ratio > 0 && double.IsFinite(ratio))) throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "a ratio of variances is above 0");
        if (Moments.LackOf(points, 3) is var lack && lack != Lack.Nothing) return new(lack);
        var all = Moments.Of(points);
        if (all.Sxy <= 0) return new(Lack.NoTrend);
        var slope = SlopeOf(all, ratio);
        var (slopes, intercepts) = (new double[points.Length], new double[points.Length]);
        for (var i = 0; i < points.Length; i++)
        {
            var less = all.Without(points[i]);
            // All spread, or all common movement, hung on this one point.
            if (less.Sxy <= 0 || less.Sxx <= 1e-12 * all.Sxx) return new(Lack.NoTrend);
            slopes[i] = SlopeOf(less, ratio);
            intercepts[i] = less.MeanY - (slopes[i] * less.MeanX);
        }

        return new(new Deming(slope, JackknifeError(slopes), all.MeanY - (slope * all.MeanX), JackknifeError(intercepts), points.Length));
    }

    /// <summary>Where the slope lies, at a confidence.</summary>
    /// <param name="confidence">Between 0 and 1, such as 0.95.</param>
    public ValueRange SlopeWithin(double confidence) => Around(Slope, SlopeError, confidence);

    /// <summary>Where the intercept lies, at a confidence.</summary>
    /// <param name="confidence">Between 0 and 1, such as 0.95.</param>
    public ValueRange InterceptWithin(double confidence) => Around(Intercept, InterceptError, confidence);

    /// <summary>The line at x.</summary>
    public double At(double x) => Intercept + (Slope * x);

    /// <summary>The slope from the sums alone; they must rise together.</summary>
    internal static double SlopeOf(Moments m, double ratio)
    {
        var tilt = m.Syy - (ratio * m.Sxx);
        return (tilt + Math.Sqrt((tilt * tilt) + (4 * ratio * m.Sxy * m.Sxy))) / (2 * m.Sxy);
    }

    private ValueRange Around(double value, double error, double confidence)
    {
        var half = StudentT.TwoSided(confidence, Count - 2) * error;
        return new(value - half, value + half);
    }

    private static double JackknifeError(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) * (values.Length - 1) / values.Length);
    }
}
