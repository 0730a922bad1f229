using System.Diagnostics;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Rates of two sides measured in turn: A B A B. A busy neighbour then hits both, and each ratio is of two neighbours in time.</summary>
internal sealed record Pairs(IReadOnlyList<double> Ours, IReadOnlyList<double> Baseline)
{
    /// <summary>Median over the pairs.</summary>
    public double Ratio => Percentile.Median([.. Ours.Zip(Baseline, (a, b) => a / b)]);

    /// <summary>Lowest and highest ratio of a pair.</summary>
    public (double Low, double High) Range => (Ours.Zip(Baseline, (a, b) => a / b).Min(), Ours.Zip(Baseline, (a, b) => a / b).Max());

    /// <summary>As a line of the report.</summary>
    public Row Row(string what, string toReach = "") => new(what, Say.Spread(Ours), Say.Spread(Baseline), $"{Say.Ratio(Ratio)} ({Say.Ratio(Range.Low)} to {Say.Ratio(Range.High)})", toReach);
}

/// <summary>Runs rounds.</summary>
internal static class Rounds
{
    /// <summary>Both sides in turn, after one round of each that is not counted.</summary>
    public static async Task<Pairs> InTurnAsync(int rounds, Func<Task<double>> ours, Func<Task<double>> baseline)
    {
        await ours();
        await baseline();
        var (a, b) = (new List<double>(), new List<double>());
        for (var i = 0; i < rounds; i++)
        {
            a.Add(await ours());
            b.Add(await baseline());
        }

        return new Pairs(a, b);
    }

    /// <summary>Both sides in turn, for work that needs no waiting.</summary>
    public static Pairs InTurn(int rounds, Func<double> ours, Func<double> baseline) =>
        InTurnAsync(rounds, () => Task.FromResult(ours()), () => Task.FromResult(baseline())).GetAwaiter().GetResult();

    /// <summary>How many a second a piece of work does.</summary>
    public static double Rate(long count, Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return count / Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    /// <summary>How many a second of processor time of this process, garbage collection included: neighbours cost it nothing.</summary>
    public static double CpuRate(long count, Action work)
    {
        var before = Environment.CpuUsage.TotalTime;
        work();
        return count / (Environment.CpuUsage.TotalTime - before).TotalSeconds;
    }

    /// <summary>Milliseconds that a piece of work takes.</summary>
    public static async Task<double> MillisecondsAsync(Func<Task> work)
    {
        var start = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}

/// <summary>Order statistics.</summary>
internal static class Percentile
{
    public static double Median(IReadOnlyList<double> values) => Of(values, 0.5);

    /// <summary>The value that this share of the sample does not exceed (nearest rank); the median of an even number is the mean of the middle two.</summary>
    public static double Of(IReadOnlyList<double> values, double share)
    {
        if (values.Count == 0) return double.NaN;
        double[] sorted = [.. values.Order()];
        if (share == 0.5 && sorted.Length % 2 == 0) return (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
        return sorted[Math.Clamp((int)Math.Ceiling(share * sorted.Length) - 1, 0, sorted.Length - 1)];
    }
}
