namespace PlantWatch.Core.Probes;

/// <summary>The standard normal distribution.</summary>
internal static class Normal
{
    /// <summary>The probability of more than z, to about 1.2e-7 relative: the complementary error function by the rational Chebyshev fit of W. J. Cody's kind (Numerical Recipes, erfcc).</summary>
    public static double Above(double z)
    {
        var x = Math.Abs(z) / Math.Sqrt(2);
        var t = 1 / (1 + (0.5 * x));
        var poly = -1.26551223 + (t * (1.00002368 + (t * (0.37409196 + (t * (0.09678418 + (t * (-0.18628806 + (t * (0.27886807
            + (t * (-1.13520398 + (t * (1.48851587 + (t * (-0.82215223 + (t * 0.17087277)))))))))))))))));
        var half = 0.5 * t * Math.Exp((-x * x) + poly);
        return z >= 0 ? half : 1 - half;
    }
}
