using System.Collections.Immutable;

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

    /// <summary>Deming regression with the ratio of the error variances known from the pairs (closed form, reference: CLSI EP09 and textbooks).</summary>
    public static SlopeFit Of(ImmutableArray<PairedCheck> pairs)
    {
        var (raw, test, rawError, testError) = (0.0, 0.0, 0.0, 0.0);
        foreach (var pair in pairs)
        {
            raw += pair.Raw.Value / pairs.Length;
            test += pair.Test.Value / pairs.Length;
            rawError += pair.Raw.StandardUncertainty * pair.Raw.StandardUncertainty / pairs.Length;
            testError += pair.TestScatter * pair.TestScatter / pairs.Length;
        }

        var (sxx, syy, sxy) = (0.0, 0.0, 0.0);
        foreach (var pair in pairs)
        {
            var (dx, dy) = (pair.Raw.Value - raw, pair.Test.Value - test);
            (sxx, syy, sxy) = (sxx + (dx * dx), syy + (dy * dy), sxy + (dx * dy));
        }

        // No common movement: there is no slope to find, and its uncertainty says so.
        if (sxy <= 0 || sxx <= 0) return new(1, 1, test - raw);
        var ratio = testError / rawError;
        var tilt = syy - (ratio * sxx);
        var slope = (tilt + Math.Sqrt((tilt * tilt) + (4 * ratio * sxy * sxy))) / (2 * sxy);
        return new(slope, Math.Sqrt((testError + (slope * slope * rawError)) / sxx), test - (slope * raw));
    }
}
