namespace PlantWatch.Core.Statistics;

/// <summary>The straight line y = intercept + slope x that leaves the least sum of squared residuals in y. For an x without error; where both carry error see <see cref="Deming"/>.</summary>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeError">Its standard error.</param>
/// <param name="Intercept">Intercept.</param>
/// <param name="InterceptError">Its standard error.</param>
/// <param name="ResidualSd">Residual standard deviation, n - 2 degrees of freedom.</param>
/// <param name="RSquared">Share of the variance of y that the line explains, 0 to 1; 0 where y does not vary.</param>
/// <param name="Count">Points.</param>
public sealed record LeastSquares(double Slope, double SlopeError, double Intercept, double InterceptError, double ResidualSd, double RSquared, int Count)
{
    /// <summary>Fits the line; three points at least. Held to the certified values of the Norris data, NIST Statistical Reference Datasets.</summary>
    /// <param name="points">The points, in any order.</param>
    public static Finding<LeastSquares> Of(ReadOnlySpan<XyPoint> points)
    {
        if (Moments.LackOf(points, 3) is var lack && lack != Lack.Nothing) return new(lack);
        var m = Moments.Of(points);
        var slope = m.Sxy / m.Sxx;
        var intercept = m.MeanY - (slope * m.MeanX);
        var left = 0.0;
        foreach (var point in points)
        {
            var residual = point.Y - m.MeanY - (slope * (point.X - m.MeanX));
            left += residual * residual;
        }

        var sd = Math.Sqrt(left / (m.Count - 2));
        return new(new LeastSquares(
            slope, sd / Math.Sqrt(m.Sxx), intercept, sd * Math.Sqrt((1.0 / m.Count) + (m.MeanX * m.MeanX / m.Sxx)), sd,
            m.Syy > 0 ? 1 - (left / m.Syy) : 0, m.Count));
    }

    /// <summary>The line at x.</summary>
    public double At(double x) => Intercept + (Slope * x);
}
