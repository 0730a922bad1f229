using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage;

/// <summary>Count, mean, deviation and slope of readings in one pass, without losing digits to large numbers.</summary>
/// <remarks>B. P. Welford, Technometrics 4 (1962) 419-420, for mean and sum of squares; the same step for the products with time.</remarks>
public struct WindowSums
{
    private const double MicrosecondsPerHour = 3.6e9;
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
        series, from, to, _count, _excluded, _meanValue,
        _count > 1 ? Math.Sqrt(_valueSquares / (_count - 1)) : 0,
        _hourSquares > 0 ? _products / _hourSquares : 0);
}
