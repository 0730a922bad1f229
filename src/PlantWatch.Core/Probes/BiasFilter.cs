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

    private readonly TrustModel _model;
    private readonly double _reference;
    private double _level, _slope, _bias;
    private double _vLevel, _vSlope, _vBias, _cLevelSlope, _cLevelBias, _cSlopeBias;

    public BiasFilter(TrustModel model)
    {
        _model = model;
        _reference = model.Learns ? OrpReference : 0;
        (_level, _vLevel) = model.Learns ? (OrpLevel.Mean, OrpLevel.Sd * OrpLevel.Sd) : (0, 0);
        (_slope, _vSlope) = model.Learns ? (OrpSlope.Mean, OrpSlope.Sd * OrpSlope.Sd) : (1, 0);
        _vBias = model.UncheckedSd * model.UncheckedSd;
    }

    public readonly double Bias => _bias;

    public readonly double BiasVariance => _vBias;

    public readonly double Slope => _slope;

    public readonly (double Reference, double Level, double LevelVariance, double Slope, double SlopeVariance) Line =>
        (_reference, _level, _vLevel, _slope, _vSlope);

    /// <summary>Lets time pass.</summary>
    public void Advance(double days)
    {
        if (days <= 0) return;
        _vBias += _model.DriftVariancePerDay * days;
        if (_model.Learns) _vLevel += LevelVariancePerDay * days;
    }

    /// <summary>What a true probe would read at x, and its variance.</summary>
    public readonly (double Mean, double Variance) Expected(double x)
    {
        var d = x - _reference;
        return (_level + (_slope * d), _vLevel + (d * d * _vSlope) + (2 * d * _cLevelSlope));
    }

    /// <summary>What this probe will read at x, bias included, and its variance.</summary>
    public readonly (double Mean, double Variance) Predict(double x)
    {
        var d = x - _reference;
        var (mean, variance) = Expected(x);
        return (mean + _bias, variance + _vBias + (2 * (_cLevelBias + (d * _cSlopeBias))));
    }

    /// <summary>Takes a reading at x in, with the variance of the pair.</summary>
    public void Update(double reading, double x, double variance)
    {
        var d = x - _reference;
        var (mean, spread) = Predict(x);
        var s = spread + variance;
        // Covariance of each number with the predicted reading, and from it the gains.
        var a = _vLevel + (d * _cLevelSlope) + _cLevelBias;
        var b = _cLevelSlope + (d * _vSlope) + _cSlopeBias;
        var c = _cLevelBias + (d * _cSlopeBias) + _vBias;
        var innovation = reading - mean;
        _level += a / s * innovation;
        _slope += b / s * innovation;
        _bias += c / s * innovation;
        _vLevel = Math.Max(0, _vLevel - (a * a / s));
        _vSlope = Math.Max(0, _vSlope - (b * b / s));
        _vBias = Math.Max(1e-12, _vBias - (c * c / s));
        _cLevelSlope -= a * b / s;
        _cLevelBias -= a * c / s;
        _cSlopeBias -= b * c / s;
    }

    /// <summary>Owns up to a sudden shift: the bias may now be anywhere within this standard deviation.</summary>
    public readonly BiasFilter Loosened(double sd) => this with { _vBias = _vBias + (sd * sd) };

    /// <summary>Moves the bias by a known amount: a correction changed.</summary>
    public void Shift(double amount) => _bias += amount;
}
