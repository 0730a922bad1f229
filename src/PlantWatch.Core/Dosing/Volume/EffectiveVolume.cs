using System.Collections.Immutable;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Dosing.Volume;

/// <summary>How the volume that doses tell of stands to that of the plant file.</summary>
public enum VolumeWord
{
    /// <summary>Not looked at.</summary>
    Unknown = 0,
    /// <summary>Too few retests to say anything: one bad one could not be told from the others.</summary>
    TooFew,
    /// <summary>As stated, within what tests and strengths can tell.</summary>
    Agrees,
    /// <summary>The doses tell of more water.</summary>
    More,
    /// <summary>The doses tell of less water.</summary>
    Less,
}

/// <summary>A sign as it was used.</summary>
/// <param name="Sign">The sign.</param>
/// <param name="CubicMetres">The water it tells of by itself, m3; infinite where nothing rose.</param>
/// <param name="Weight">Its part of the answer, 0 to 1.</param>
/// <param name="Apart">It lies beyond three times its uncertainty from the others, and counts for less.</param>
public readonly record struct UsedSign(VolumeSign Sign, double CubicMetres, double Weight, bool Apart);

/// <summary>The water that doses and their retests tell of, with its interval.</summary>
/// <param name="Word">Against the plant file.</param>
/// <param name="Stated">What the plant file says, m3.</param>
/// <param name="CubicMetres">What the doses tell of, m3; 0 with too few.</param>
/// <param name="Low">Lower end of its interval (k = 2, or Student's factor where the signs scatter more than their tests can), m3.</param>
/// <param name="High">Upper end, m3; infinite where the signs bear no end.</param>
/// <param name="Signs">What it rests on, in order of time.</param>
public sealed record EffectiveVolume(VolumeWord Word, double Stated, double CubicMetres, double Low, double High, ImmutableArray<UsedSign> Signs)
{
    /// <summary>Fewest signs that one bad one can be told from: of two nobody can say which is bad.</summary>
    public const int Fewest = 3;

    /// <summary>A difference that a confirmed volume is allowed anyway is no news: <see cref="SingleDose.VolumeUncertainty"/>.</summary>
    public const double Allowed = SingleDose.VolumeUncertainty;

    // Huber's bound: 1.5 standard deviations keep 96 % of the efficiency where all are good (Huber 1981).
    private const double Bound = 1.5;

    // Three times its uncertainty: one good sign in some four hundred lies so far out by chance (common practice, three sigma).
    private const double FarApart = 3;

    /// <summary>The answer of several signs, weighted by their tests, robust to one bad, an error of strength carried by all doses of its product alike.</summary>
    /// <param name="signs">The signs, in any order.</param>
    /// <param name="stated">Water of the circuit by the plant file, m3, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">No volume is stated.</exception>
    public static EffectiveVolume Of(IEnumerable<VolumeSign> signs, double stated)
    {
        ArgumentNullException.ThrowIfNull(signs);
        if (!(stated > 0)) throw new ArgumentOutOfRangeException(nameof(stated), stated, "a volume is above 0");
        // All against the volume that is stated now, whatever they were predicted for.
        var all = signs.Where(s => s.TestU > 0).OrderBy(s => s.At).Select(s => s with { Ratio = s.Ratio * stated / s.CubicMetres, TestU = s.TestU * stated / s.CubicMetres, CubicMetres = stated }).ToArray();
        if (all.Length < Fewest) return new(VolumeWord.TooFew, stated, 0, 0, double.PositiveInfinity, Used(all, [.. all.Select(s => Exact(s))], double.NaN));
        var (ratio, weights) = Middle(all);
        var u = Math.Sqrt(Square(Random(all, weights, ratio)) + Square(2 * Strength(all, weights) * ratio));
        return new(Against(ratio, u), stated, stated / Math.Max(ratio, 1e-9), stated / Math.Max(ratio + u, 1e-9), ratio - u > 0 ? stated / (ratio - u) : double.PositiveInfinity, Used(all, weights, ratio));
    }

    private static VolumeWord Against(double ratio, double u)
    {
        if (Math.Abs(ratio - 1) <= u || Math.Abs((1 / Math.Max(ratio, 1e-9)) - 1) <= Allowed) return VolumeWord.Agrees;
        return ratio < 1 ? VolumeWord.More : VolumeWord.Less;
    }

    private static (double Ratio, double[] Weights) Middle(VolumeSign[] all)
    {
        var ratio = Median(all);
        var weights = new double[all.Length];
        for (var round = 0; round < 100; round++)
        {
            for (var i = 0; i < all.Length; i++) weights[i] = Exact(all[i]) * Math.Min(1, Bound / Math.Max(1e-12, Math.Abs(all[i].Ratio - ratio) / all[i].TestU));
            var next = all.Select((s, i) => weights[i] * s.Ratio).Sum() / weights.Sum();
            if (Math.Abs(next - ratio) < 1e-12) break;
            ratio = next;
        }

        return (ratio, weights);
    }

    // The weighted median begins: no single one can carry it off.
    private static double Median(VolumeSign[] all)
    {
        var (half, sum) = (all.Sum(Exact) / 2, 0.0);
        foreach (var sign in all.OrderBy(s => s.Ratio))
            if ((sum += Exact(sign)) >= half) return sign.Ratio;
        return all[^1].Ratio;
    }

    // Expanded. Where they scatter more than their tests can, the scatter speaks (Birge's ratio), with Student's factor for how few they are.
    private static double Random(VolumeSign[] all, double[] weights, double ratio)
    {
        var within = 1 / Math.Sqrt(weights.Sum());
        var birge = Math.Sqrt(all.Select((s, i) => weights[i] * Square(s.Ratio - ratio)).Sum() / (all.Length - 1));
        return birge <= 1 ? 2 * within : Math.Max(2, StudentT.TwoSided(0.95, all.Length - 1)) * within * birge;
    }

    // The strength of one product is one unknown, however often it was given.
    private static double Strength(VolumeSign[] all, double[] weights)
    {
        var sum = weights.Sum();
        return Math.Sqrt(all.Select((s, i) => (s.ProductId, Part: weights[i] / sum, s.StrengthU)).GroupBy(s => s.ProductId).Sum(g => Square(g.Sum(s => s.Part * s.StrengthU))));
    }

    private static ImmutableArray<UsedSign> Used(VolumeSign[] all, double[] weights, double ratio)
    {
        var sum = weights.Sum();
        return [.. all.Select((s, i) => new UsedSign(s, s.Ratio > 0 ? s.CubicMetres / s.Ratio : double.PositiveInfinity, weights[i] / sum, Math.Abs(s.Ratio - ratio) > FarApart * s.TestU))];
    }

    private static double Exact(VolumeSign sign) => 1 / Square(sign.TestU);

    private static double Square(double value) => value * value;
}
