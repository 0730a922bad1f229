using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage;

/// <summary>Count, mean, deviation and slope of readings in one pass, without losing digits to large numbers.</summary>
/// <remarks>B. P. Welford, Technometrics 4 (1962) 419-420, for mean and sum of squares; the same step for the products with time.</remarks>
internal struct WindowSums
{
    private const double MicrosecondsPerHour = 3.6e9;
    private int count;
    private int excluded;
    private long origin;
    private double meanValue;
    private double meanHours;
    private double valueSquares;
    private double hourSquares;
    private double products;

    public void Add(long t, double value, Quality quality)
    {
        if (!quality.IsGood())
        {
            excluded++;
            return;
        }
        if (count++ == 0) origin = t;
        var hours = (t - origin) / MicrosecondsPerHour;
        var (valueStep, hourStep) = (value - meanValue, hours - meanHours);
        meanValue += valueStep / count;
        meanHours += hourStep / count;
        valueSquares += valueStep * (value - meanValue);
        hourSquares += hourStep * (hours - meanHours);
        products += hourStep * (value - meanValue);
    }

    /// <summary>The window. Deviation of a sample (n - 1), 0 of one reading; slope 0 where time does not move.</summary>
    public readonly ProbeWindow Close(string series, Instant from, Instant to) => new(
        series, from, to, count, excluded, meanValue,
        count > 1 ? Math.Sqrt(valueSquares / (count - 1)) : 0,
        hourSquares > 0 ? products / hourSquares : 0);
}
