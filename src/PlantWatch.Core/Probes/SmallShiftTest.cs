namespace PlantWatch.Core.Probes;

/// <summary>A two-sided tabular CUSUM on normalised innovations: finds small shifts that persist, where each single check looks sound (NIST/SEMATECH e-Handbook 6.3.2.3).</summary>
/// <remarks>k = 0.5 looks for shifts of one standard deviation; h = 5 lets sound innovations signal about once in 465 checks (published run length), and a signal only makes the estimate listen harder.</remarks>
internal struct SmallShiftTest
{
    private const double Slack = 0.5;
    private const double Limit = 5;

    private double high, low;

    /// <summary>Takes the next normalised innovation; true when it completes a shift, and the sums start anew.</summary>
    public bool Signals(double z)
    {
        high = Math.Max(0, high + z - Slack);
        low = Math.Max(0, low - z - Slack);
        if (high <= Limit && low <= Limit) return false;
        (high, low) = (0, 0);
        return true;
    }
}
