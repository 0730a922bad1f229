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

    private double _count, _mean, _squares;

    /// <summary>Draws a test back by what is known, after learning from it.</summary>
    public (double X, double Variance) Draw(double test, double u)
    {
        Learn(test, u);
        var spread = Variance;
        var reliability = spread / (spread + (u * u));
        return (_mean + (reliability * (test - _mean)), reliability * u * u);
    }

    private readonly double Variance => ((Firmness * UsualSd * UsualSd) + _squares) / (Firmness + _count);

    private void Learn(double test, double u)
    {
        var far = MostDeviations * Math.Sqrt(Variance + (u * u));
        var apart = _count == 0 ? 0 : Math.Clamp(test - _mean, -far, far);
        if (_count == 0) _mean = test;
        _count++;
        _mean += apart / _count;
        _squares += Math.Max(0, (apart * apart) - (u * u));
    }
}
