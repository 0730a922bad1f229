namespace PlantWatch.Core.Statistics;

/// <summary>A two-sided tabular CUSUM around a target of 0 (NIST/SEMATECH e-Handbook 6.3.2.3): finds small shifts that persist, where each single value looks sound. The default signals at once and is no use; make one.</summary>
/// <param name="slack">k: what is let pass each time, half the shift looked for.</param>
/// <param name="limit">h: the sum that signals.</param>
public struct Cusum(double slack, double limit)
{
    /// <summary>Sum upwards.</summary>
    public double High { get; private set; }

    /// <summary>Sum downwards.</summary>
    public double Low { get; private set; }

    /// <summary>Takes the next value less target; true while a sum stands beyond the limit.</summary>
    public bool Signals(double deviation)
    {
        High = Math.Max(0, High + deviation - slack);
        Low = Math.Max(0, Low - deviation - slack);
        return High > limit || Low > limit;
    }
}
