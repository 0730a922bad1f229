using System.Collections.Immutable;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Probes;

/// <summary>The straight line test = slope x raw + offset through pairs that both carry error.</summary>
/// <param name="Slope">Slope.</param>
/// <param name="SlopeU">Its standard uncertainty.</param>
/// <param name="Offset">Offset.</param>
internal readonly record struct SlopeFit(double Slope, double SlopeU, double Offset)
{
    /// <summary>How far apart the tests lie.</summary>
    public static double Span(ImmutableArray<PairedCheck> pairs)
    {
        var (low, high) = (double.MaxValue, double.MinValue);
        foreach (var pair in pairs) (low, high) = (Math.Min(low, pair.Test.Value), Math.Max(high, pair.Test.Value));
        return pairs.Length == 0 ? 0 : high - low;
    }

    /// <summary>Deming regression with the ratio of the error variances known from the pairs.</summary>
    public static SlopeFit Of(ImmutableArray<PairedCheck> pairs)
    {
        var (rawError, testError) = (0.0, 0.0);
        foreach (var pair in pairs)
        {
            rawError += pair.Raw.StandardUncertainty * pair.Raw.StandardUncertainty / pairs.Length;
            testError += pair.TestScatter * pair.TestScatter / pairs.Length;
        }

        var sums = Moments.Of([.. pairs.Select(pair => new XyPoint(pair.Raw.Value, pair.Test.Value))]);
        // No common movement: there is no slope to find, and its uncertainty says so.
        if (sums.Sxy <= 0 || sums.Sxx <= 0) return new(1, 1, sums.MeanY - sums.MeanX);
        var slope = Deming.SlopeOf(sums, testError / rawError);
        return new(slope, Math.Sqrt((testError + (slope * slope * rawError)) / sums.Sxx), sums.MeanY - (slope * sums.MeanX));
    }
}
