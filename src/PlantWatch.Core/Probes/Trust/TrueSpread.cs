namespace PlantWatch.Core.Probes;

/// <summary>
/// How far a pool's hypochlorous acid really wanders, learned from the tests less their scatter. A test far out is then more likely a bad test than strange
/// water, and its place on the line is drawn back accordingly (regression calibration): without it every spoiled test would flatten the line.
/// </summary>
/// <remarks>The Gaussian case of errors in the explanatory variable: x given the test is mean + r (test - mean) with variance r u2, r = spread2 / (spread2 + u2).</remarks>
internal struct TrueSpread
{
    // A pool under control holds its chlorine within a quarter and its pH within a tenth: 0.12 decades (common practice), held as firmly as 8 tests.
    private const double UsualSd = 0.12;
    private const double Firmness = 8;

    // One test counts for no more than this many standard deviations of its own.
    private const double MostDeviations = 3;

    // Older tests fade: the pool of last month may have been another.
    private const double Remembered = 60;

    // The logarithm of odds beyond which nothing becomes clearer, and no number overflows.
    private const double Beyond = 300;

    public double Count, Mean, Squares;

    /// <summary>Variance of what the pool itself does.</summary>
    public readonly double Variance => ((Firmness * UsualSd * UsualSd) + Squares) / (Firmness + Count);

    /// <summary>Draws a test back by what is known.</summary>
    public readonly (double X, double Variance) Draw(double test, double u)
    {
        var reliability = Variance / (Variance + (u * u));
        return (Mean + (reliability * (test - Mean)), reliability * u * u);
    }

    /// <summary>By how much a test alone, beside what the pool usually is, speaks for a slip: the ratio of its likelihoods. 1 while little is known.</summary>
    public readonly double SlipOdds(double test, double u, double slip)
    {
        if (Count < 5) return 1;
        var (sound, spoiled) = (Variance + (u * u), Variance + (u * u) + (slip * slip));
        var apart = (test - Mean) * (test - Mean);
        return Math.Exp(Math.Min(Beyond, 0.5 * apart * ((1 / sound) - (1 / spoiled)))) * Math.Sqrt(sound / spoiled);
    }

    /// <summary>Takes a test in.</summary>
    public void Learn(double test, double u)
    {
        var far = MostDeviations * Math.Sqrt(Variance + (u * u));
        var apart = Count == 0 ? 0 : Math.Clamp(test - Mean, -far, far);
        if (Count == 0) Mean = test;
        if (Count >= Remembered) Squares *= (Remembered - 1) / Remembered;
        else Count++;
        Mean += apart / Count;
        Squares += Math.Max(0, (apart * apart) - (u * u));
    }
}
