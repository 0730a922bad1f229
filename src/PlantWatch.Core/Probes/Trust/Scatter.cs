namespace PlantWatch.Core.Probes;

/// <summary>How much more or less than their stated uncertainty the tests of this pool scatter: a ratio of variances, held at 1 as firmly as ten tests hold it.</summary>
internal struct Scatter
{
    private const double Firmness = 10;
    private const double Remembered = 60;
    private const double MostSquare = 9;

    public double Count, Sum;

    public static Scatter AsStated => new() { Count = Firmness, Sum = Firmness };

    /// <summary>The ratio, never beyond a half or twice the stated standard deviation.</summary>
    public readonly double Ratio => Math.Clamp(Sum / Count, 0.25, 4);

    /// <summary>Takes in how far a sound test was off, in standard deviations of what was foreseen under the ratio so far.</summary>
    public void Learn(double z)
    {
        var found = Math.Min(MostSquare, z * z) * Ratio;
        if (Count >= Remembered) Sum *= (Remembered - 1) / Remembered;
        else Count++;
        Sum += found;
    }
}
