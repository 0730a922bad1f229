namespace PlantWatch.Core.Statistics;

/// <summary>A count of rare events: between which rates it leaves one.</summary>
public static class PoissonCount
{
    /// <summary>The exact interval of the expected count (Garwood): 0 to 2.996 for none and 90 %, 0.818 to 7.754 for three.</summary>
    /// <param name="count">Events seen, 0 to 100,000.</param>
    /// <param name="confidence">Above 0 and below 1, both sides together.</param>
    /// <returns>Lowest and highest expected count; the lowest is 0 when none was seen.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Either is out of its range.</exception>
    public static (double Low, double High) Interval(int count, double confidence)
    {
        if (count is < 0 or > 100_000) throw new ArgumentOutOfRangeException(nameof(count), count, "a count is 0 to 100,000");
        if (!(confidence > 0 && confidence < 1)) throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "confidence lies above 0 and below 1");
        var beyond = (1 - confidence) / 2;
        return (count == 0 ? 0 : Where(mean => 1 - AtMost(count - 1, mean) > beyond, count), Where(mean => AtMost(count, mean) < beyond, count));
    }

    /// <summary>The chance of at most so many where a mean is expected.</summary>
    public static double AtMost(int count, double mean)
    {
        if (mean <= 0) return 1;
        // Terms by their logarithm: e to the minus mean alone would be nil for a large one.
        var (sum, log) = (0.0, -mean);
        for (var k = 0; k <= count; k++)
        {
            sum += Math.Exp(log);
            log += Math.Log(mean) - Math.Log(k + 1);
        }

        return Math.Min(1, sum);
    }

    // The mean from which on a condition holds; halving cannot fail.
    private static double Where(Func<double, bool> holds, int count)
    {
        var (low, high) = (0.0, (2.0 * count) + 50);
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }
}
