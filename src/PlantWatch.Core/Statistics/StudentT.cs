namespace PlantWatch.Core.Statistics;

/// <summary>Student's t distribution: how far a mean of few values may stray.</summary>
public static class StudentT
{
    // Lanczos, g = 7, nine terms: ln gamma to about 15 digits (coefficients after Godfrey, as widely tabulated).
    private static readonly double[] Lanczos =
    [
        0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
        12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
    ];

    /// <summary>The t beyond which, on both sides together, 1 - confidence of the distribution lies: 2.1199 for 95 % and 16 degrees of freedom.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">Above 0; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is out of its range.</exception>
    public static double TwoSided(double confidence, double degreesOfFreedom) => Quantile((1 + confidence) / 2, degreesOfFreedom);

    /// <summary>The t below which a share of the distribution lies.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">Above 0; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is out of its range.</exception>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        if (!(share > 0 && share < 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "a share lies above 0 and below 1");
        if (!(degreesOfFreedom > 0 && double.IsFinite(degreesOfFreedom)))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "degrees of freedom are above 0");
        if (share < 0.5) return -Quantile(1 - share, degreesOfFreedom);
        if (share == 0.5) return 0;
        var (low, high) = (0.0, 1.0);
        while (Below(high, degreesOfFreedom) < share && high < 1e300) (low, high) = (high, high * 2);
        // Halving cannot fail, and 200 halvings leave no digit open.
        for (var i = 0; i < 200 && high - low > 1e-15 * high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle, degreesOfFreedom) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>The share of the distribution below t.</summary>
    /// <param name="t">Any finite number.</param>
    /// <param name="degreesOfFreedom">Above 0; need not be whole.</param>
    public static double Below(double t, double degreesOfFreedom)
    {
        var beyond = IncompleteBeta(degreesOfFreedom / (degreesOfFreedom + (t * t)), degreesOfFreedom / 2, 0.5) / 2;
        return t > 0 ? 1 - beyond : beyond;
    }

    // Regularised incomplete beta function by its continued fraction, on the side where that converges fast.
    private static double IncompleteBeta(double x, double a, double b)
    {
        if (x <= 0) return 0;
        if (x >= 1) return 1;
        var front = Math.Exp(LnGamma(a + b) - LnGamma(a) - LnGamma(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x)));
        return x < (a + 1) / (a + b + 2) ? front * Fraction(x, a, b) / a : 1 - (front * Fraction(1 - x, b, a) / b);
    }

    // Evaluated from the front (modified Lentz).
    private static double Fraction(double x, double a, double b)
    {
        const double tiny = 1e-300;
        var (c, d) = (1.0, 1 / NotZero(1 - ((a + b) * x / (a + 1))));
        var value = d;
        for (var m = 1; m < 10_000; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            value *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            value *= d * c;
            if (Math.Abs((d * c) - 1) < 1e-16) break;
        }

        return value;

        static double NotZero(double v) => Math.Abs(v) < tiny ? tiny : v;
    }

    private static double LnGamma(double z)
    {
        if (z < 0.5) return Math.Log(Math.PI / Math.Sin(Math.PI * z)) - LnGamma(1 - z);
        z -= 1;
        var sum = Lanczos[0];
        for (var i = 1; i < Lanczos.Length; i++) sum += Lanczos[i] / (z + i);
        var t = z + 7.5;
        return (0.5 * Math.Log(2 * Math.PI)) + ((z + 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }
}
