namespace PlantWatch.Core.Statistics;

/// <summary>An exponentially weighted moving average with its control limits (NIST/SEMATECH e-Handbook 6.3.2.4): each value counts a little less than the one after it. The default watches nothing; make one.</summary>
/// <param name="target">What the values should be on average; the average starts there.</param>
/// <param name="sd">Standard deviation of a single value, above 0.</param>
/// <param name="weight">Lambda, the weight of the newest value: above 0, at most 1.</param>
/// <param name="width">Standard deviations of the average from target to limit; 3 is usual.</param>
public struct Ewma(double target, double sd, double weight, double width = 3)
{
    private readonly double _weight = weight;

    /// <summary>The average by now.</summary>
    public double Value { get; private set; } = target;

    /// <summary>Lower control limit, once many values are in.</summary>
    public double Low { get; } = target - (width * sd * Math.Sqrt(weight / (2 - weight)));

    /// <summary>Upper control limit, once many values are in.</summary>
    public double High { get; } = target + (width * sd * Math.Sqrt(weight / (2 - weight)));

    /// <summary>Takes the next value; true while the average lies outside the limits.</summary>
    public bool Signals(double value)
    {
        Value = (_weight * value) + ((1 - _weight) * Value);
        return Value < Low || Value > High;
    }
}
