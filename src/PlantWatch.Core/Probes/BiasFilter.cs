namespace PlantWatch.Core.Probes;

/// <summary>
/// A Kalman filter over three numbers: level and slope of the line a probe should follow, and the bias of the probe against it. Where the test names
/// the reading itself (pH, temperature) the line is the identity, known exactly, and what is left is a scalar random walk.
/// </summary>
/// <remarks>Reading = level + slope (x - reference) + bias. Level and bias part company by their priors: the first checks settle the level, what moves later is bias.</remarks>
internal struct BiasFilter
{
    // ORP of a chlorinated pool at HOCl 0.5 mg/L as Cl2: 700 +- 150 mV whatever the reference electrode, about 70 mV a decade where the two-electron
    // Nernst slope would be 30 and mixed potentials reach 85 and more (common practice; the line only has to start wide).
    private const double OrpReference = -0.3;
    private static readonly (double Mean, double Sd) OrpLevel = (700, 150);
    private static readonly (double Mean, double Sd) OrpSlope = (70, 25);

    // The line forgets slowly: as if its level could move 5 mV a month without anybody's fault (chloride, season).
    private const double LevelVariancePerDay = 5.0 * 5.0 / 30.44;

    private readonly TrustModel model;
    private readonly double reference;
    private double level, slope, bias;
    private double vLevel, vSlope, vBias, cLevelSlope, cLevelBias, cSlopeBias;

    public BiasFilter(TrustModel model)
    {
        this.model = model;
        reference = model.Learns ? OrpReference : 0;
        (level, vLevel) = model.Learns ? (OrpLevel.Mean, OrpLevel.Sd * OrpLevel.Sd) : (0, 0);
        (slope, vSlope) = model.Learns ? (OrpSlope.Mean, OrpSlope.Sd * OrpSlope.Sd) : (1, 0);
        vBias = model.UncheckedSd * model.UncheckedSd;
    }

    public readonly double Bias => bias;

    public readonly double BiasVariance => vBias;

    public readonly double Slope => slope;

    public readonly (double Reference, double Level, double LevelVariance, double Slope, double SlopeVariance) Line =>
        (reference, level, vLevel, slope, vSlope);

    /// <summary>Lets time pass.</summary>
    public void Advance(double days)
    {
        if (days <= 0) return;
        vBias += model.DriftVariancePerDay * days;
        if (model.Learns) vLevel += LevelVariancePerDay * days;
    }

    /// <summary>What a true probe would read at x, and its variance.</summary>
    public readonly (double Mean, double Variance) Expected(double x)
    {
        var d = x - reference;
        return (level + (slope * d), vLevel + (d * d * vSlope) + (2 * d * cLevelSlope));
    }

    /// <summary>What this probe will read at x, bias included, and its variance.</summary>
    public readonly (double Mean, double Variance) Predict(double x)
    {
        var d = x - reference;
        var (mean, variance) = Expected(x);
        return (mean + bias, variance + vBias + (2 * (cLevelBias + (d * cSlopeBias))));
    }

    /// <summary>Takes a reading at x in, with the variance of the pair.</summary>
    public void Update(double reading, double x, double variance)
    {
        var d = x - reference;
        var (mean, spread) = Predict(x);
        var s = spread + variance;
        // Covariance of each number with the predicted reading, and from it the gains.
        var a = vLevel + (d * cLevelSlope) + cLevelBias;
        var b = cLevelSlope + (d * vSlope) + cSlopeBias;
        var c = cLevelBias + (d * cSlopeBias) + vBias;
        var innovation = reading - mean;
        level += a / s * innovation;
        slope += b / s * innovation;
        bias += c / s * innovation;
        vLevel = Math.Max(0, vLevel - (a * a / s));
        vSlope = Math.Max(0, vSlope - (b * b / s));
        vBias = Math.Max(1e-12, vBias - (c * c / s));
        cLevelSlope -= a * b / s;
        cLevelBias -= a * c / s;
        cSlopeBias -= b * c / s;
    }

    /// <summary>Owns up to a sudden shift: the bias may now be anywhere within this standard deviation.</summary>
    public readonly BiasFilter Loosened(double sd) => this with { vBias = vBias + (sd * sd) };

    /// <summary>Moves the bias by a known amount: a correction changed.</summary>
    public void Shift(double amount) => bias += amount;
}
