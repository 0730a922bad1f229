namespace PlantWatch.Core.Probes;

/// <summary>How slow a probe must have become to turn what it usually shows into what it shows now.</summary>
/// <remarks>
/// The usual changes are taken apart into four processes that forget with time constants of 10 to 640 minutes (Ornstein-Uhlenbeck; the last is nearly a random walk). A first-order response of
/// time constant T turns each, of variance v and time constant t, into one of autocovariance v t / (t^2 - T^2) (t exp(-k/t) - T exp(-k/T)): exact. What is left to find is T, and by how much
/// the water itself is calmer or livelier than usual.
/// </remarks>
internal static class PaceFit
{
    private static readonly double[] Processes = [10, 40, 160, 640];
    private static readonly double[] Grid = Minutes();
    private static readonly double[][,] Responses = [.. Grid.Select(Response)];

    /// <summary>How far the water may be calmer or livelier than usual for a day: a factor exp(0.5), one standard deviation.</summary>
    private const double Livelier = 0.5;

    /// <summary>The best time constant in minutes, with the standard uncertainty of its logarithm, and how much better it explains what is seen than none: a difference of chi squares.</summary>
    public static (double Minutes, double LogUncertainty, double Gain) Of(in LagSums usual, in LagSums seen)
    {
        var parts = Parts(usual);
        Span<double> misfits = stackalloc double[Grid.Length];
        var best = 1;
        for (var i = 0; i < Grid.Length; i++)
        {
            misfits[i] = Misfit(Responses[i], parts, seen);
            if (i > 0 && misfits[i] < misfits[best]) best = i;
        }

        return (Grid[best], Width(misfits, best), misfits[0] - misfits[best]);
    }

    // Half of where chi square rises by one; a tenth stays, for water is no sum of four processes.
    private static double Width(ReadOnlySpan<double> misfits, int best)
    {
        int low = best, high = best;
        while (low > 1 && misfits[low] < misfits[best] + 1) low--;
        while (high < misfits.Length - 1 && misfits[high] < misfits[best] + 1) high++;
        return Math.Max(0.1, Math.Log(Grid[high] / Grid[low]) / 2);
    }

    // Relative variance of a mean product: about 1.3 lags decorrelate, so 2.6 lags / n; and what water does that is not the same every day: a quarter for one day, averaging over several.
    private static double Spread(int lag, int n) => ((2.6 * lag) + (0.0625 * 288)) / Math.Max(1, n);

    private static double Misfit(double[,] response, double[] parts, in LagSums day)
    {
        var noise = day.L1.Mean / Math.Sqrt(Math.Max(1, day.L1.N));
        Span<double> gap = stackalloc double[LagSums.Lags], weight = stackalloc double[LagSums.Lags];
        double sum = 0, weights = 1 / (Livelier * Livelier);
        for (var i = 0; i < LagSums.Lags; i++)
        {
            double model = 0;
            for (var j = 0; j < parts.Length; j++) model += response[i, j] * parts[j];
            var seen = Math.Max(0, day[i].Mean);
            gap[i] = Math.Log((seen + noise) / (model + noise));
            weight[i] = 1 / (Spread(LagSums.LagOf(i), day[i].N) + Math.Pow(noise / (seen + noise), 2));
            sum += weight[i] * gap[i];
            weights += weight[i];
        }

        var livelier = sum / weights;
        var misfit = livelier * livelier / (Livelier * Livelier);
        for (var i = 0; i < LagSums.Lags; i++) misfit += weight[i] * (gap[i] - livelier) * (gap[i] - livelier);
        return misfit;
    }

    // Variances of the processes, none below zero: coordinate descent on relative misfits.
    private static double[] Parts(in LagSums usual)
    {
        var healthy = Responses[0];
        var parts = new double[Processes.Length];
        for (var round = 0; round < 200; round++)
        {
            for (var j = 0; j < parts.Length; j++)
            {
                double with = 0, square = 0;
                for (var i = 0; i < LagSums.Lags; i++)
                {
                    var seen = Math.Max(usual[i].Mean, 1e-12);
                    double others = 0;
                    for (var k = 0; k < parts.Length; k++) others += k == j ? 0 : healthy[i, k] * parts[k];
                    with += healthy[i, j] * (seen - others) / (seen * seen);
                    square += healthy[i, j] * healthy[i, j] / (seen * seen);
                }

                parts[j] = Math.Max(0, with / square);
            }
        }

        return parts;
    }

    private static double[] Minutes()
    {
        var minutes = new double[31];
        for (var i = 1; i < minutes.Length; i++) minutes[i] = 5.1 * Math.Pow(1.15, i);
        return minutes;
    }

    private static double[,] Response(double minutes)
    {
        var response = new double[LagSums.Lags, Processes.Length];
        for (var i = 0; i < LagSums.Lags; i++)
        {
            var lag = LagSums.LagOf(i);
            for (var j = 0; j < Processes.Length; j++)
                response[i, j] = (2 * Covariance(1, Processes[j], minutes)) - Covariance(lag + 1, Processes[j], minutes) - Covariance(lag - 1, Processes[j], minutes);
        }

        return response;
    }

    private static double Covariance(int blocks, double process, double minutes)
    {
        var lag = blocks * SignalLimits.Block.TotalMinutes;
        return process / ((process * process) - (minutes * minutes)) * ((process * Math.Exp(-lag / process)) - (minutes > 0 ? minutes * Math.Exp(-lag / minutes) : 0));
    }
}
