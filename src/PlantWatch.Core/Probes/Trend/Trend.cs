
namespace PlantWatch.Core.Probes;

/// <summary>A straight line through the newest block means: where the value is and how fast it goes.</summary>
/// <param name="Slope">Change an hour, in the measurand's unit.</param>
/// <param name="SlopeError">Its standard error, widened where the scatter is not independent from block to block.</param>
/// <param name="Mean">The line at the middle of the window.</param>
/// <param name="MeanError">Its standard error, likewise.</param>
/// <param name="HalfWindow">Hours from the middle of the window to its end.</param>
public readonly record struct Trend(double Slope, double SlopeError, double Mean, double MeanError, double HalfWindow)
{
    /// <summary>Student's t for 95 % and the 13 degrees of freedom of 15 blocks (published table: 2.160).</summary>
    public const double T = 2.160;

    // Strokes of a pump leave waves in the residuals; beyond this share they are taken for part of the course.
    private const double MostLikeNext = 0.9;

    /// <summary>The line at the end of the window.</summary>
    public double Now => Mean + (Slope * HalfWindow);

    /// <summary>The least that the size of the slope is, at 95 %; 0 when its sign is open.</summary>
    public double SurelyAtLeast => Math.Max(0, Math.Abs(Slope) - (T * SlopeError));

    /// <summary>Fits a full trail; false while it is not full.</summary>
    /// <param name="trail">The trail.</param>
    /// <param name="block">Length of a block.</param>
    /// <param name="resolution">Least standard deviation of one mean: no number is finer than its last digit.</param>
    /// <param name="trend">The trend.</param>
    public static bool TryOf(in ValueTrail trail, TimeSpan block, double resolution, out Trend trend)
    {
        trend = default;
        if (!trail.IsFull) return false;
        var means = trail.Means.AsSpan();
        var n = means.Length;
        double mean = 0, sxy = 0, sxx = 0;
        foreach (var m in means) mean += m / n;
        for (var i = 0; i < n; i++)
        {
            var x = i - ((n - 1) / 2.0);
            sxy += x * (means[i] - mean);
            sxx += x * x;
        }

        var slope = sxy / sxx;
        var scatter = Math.Max(Scatter(means, mean, slope, out var wider), resolution) * wider;
        var hours = block.TotalHours;
        trend = new(slope / hours, scatter / Math.Sqrt(sxx) / hours, mean, scatter / Math.Sqrt(n), n * hours / 2);
        return true;
    }

    // What is like its neighbour tells less: n blocks count as n (1 - r)/(1 + r) (variance of a mean of a first-order autoregressive series).
    private static double Scatter(ReadOnlySpan<double> means, double mean, double slope, out double wider)
    {
        double sum = 0, lagged = 0, before = 0;
        for (var i = 0; i < means.Length; i++)
        {
            var residual = means[i] - mean - (slope * (i - ((means.Length - 1) / 2.0)));
            sum += residual * residual;
            lagged += residual * before;
            before = residual;
        }

        // Residuals of a fitted line are less alike than the scatter itself, by about 2/n (Kendall's bias, twice for two coefficients; from memory, held by a test).
        var like = sum > 0 ? Math.Clamp((lagged / sum) + (2.0 / means.Length), 0, MostLikeNext) : 0;
        wider = Math.Sqrt((1 + like) / (1 - like));
        return Math.Sqrt(sum / (means.Length - 2));
    }
}
