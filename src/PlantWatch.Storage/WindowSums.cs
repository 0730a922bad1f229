using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage;

/// <summary>Count, robust mean, deviation and slope of readings, without losing digits to large numbers.</summary>
/// <remarks>
/// B. P. Welford, Technometrics 4 (1962) 419-420, for sum of squares; the same step for the products with time. The mean is trimmed: a tenth of the readings is left out at either end, so that a
/// bubble or a spike does not move what a test is compared with (J. W. Tukey, in Contributions to Probability and Statistics, 1960, 448-485). The deviation is of all, so that it owns up to them.
/// </remarks>
public struct WindowSums
{
    private const double MicrosecondsPerHour = 3.6e9;
    private const int LeftOutOf = 10, LeastToTrim = 5;
    private List<double>? _values;
    private int _count;
    private int _excluded;
    private long _origin;
    private double _meanValue;
    private double _meanHours;
    private double _valueSquares;
    private double _hourSquares;
    private double _products;

    /// <summary>Takes a reading in.</summary>
    /// <param name="t">Its time, microseconds since 1970.</param>
    /// <param name="value">Raw number.</param>
    /// <param name="quality">A reading that is no good is only counted.</param>
    public void Add(long t, double value, Quality quality)
    {
        if (!quality.IsGood())
        {
            _excluded++;
            return;
        }
        if (_count++ == 0) _origin = t;
        (_values ??= []).Add(value);
        var hours = (t - _origin) / MicrosecondsPerHour;
        var (valueStep, hourStep) = (value - _meanValue, hours - _meanHours);
        _meanValue += valueStep / _count;
        _meanHours += hourStep / _count;
        _valueSquares += valueStep * (value - _meanValue);
        _hourSquares += hourStep * (hours - _meanHours);
        _products += hourStep * (value - _meanValue);
    }

    /// <summary>The window. Deviation of a sample (n - 1), 0 of one reading; slope 0 where time does not move.</summary>
    public readonly ProbeWindow Close(string series, Instant from, Instant to) => new(
        series, from, to, _count, _excluded, Trimmed(),
        _count > 1 ? Math.Sqrt(_valueSquares / (_count - 1)) : 0,
        _hourSquares > 0 ? _products / _hourSquares : 0);

    // One at either end is left out from five readings on, a tenth from ten on.
    private readonly double Trimmed()
    {
        if (_count < LeastToTrim) return _meanValue;
        _values!.Sort();
        var left = Math.Max(1, _count / LeftOutOf);
        var sum = 0.0;
        for (var i = left; i < _count - left; i++) sum += _values[i];
        return sum / (_count - (2 * left));
    }
}
