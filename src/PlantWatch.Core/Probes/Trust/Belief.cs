using System.Runtime.CompilerServices;

namespace PlantWatch.Core.Probes;

/// <summary>Five numbers.</summary>
[InlineArray(Belief.Size)]
internal struct Five
{
    private double _first;

    /// <summary>All five.</summary>
    public static Five Of(double bias, double rate, double gain, double reference, double passing)
    {
        var five = default(Five);
        (five[0], five[1], five[2], five[3], five[4]) = (bias, rate, gain, reference, passing);
        return five;
    }
}

/// <summary>The upper half of a symmetric matrix of five by five, a row after the other.</summary>
[InlineArray(Belief.Size * (Belief.Size + 1) / 2)]
internal struct Fifteen
{
    private double _first;
}

/// <summary>
/// What is believed of a probe, as a Gaussian over five numbers: its bias, how fast that drifts, the gain of what it should follow, the reference it is compared with
/// (what all tests are off by together; the level of an ORP line) and what passes by itself (a bad lot of reagent; the wander of a mixed potential).
/// </summary>
/// <remarks>The Kalman filter: R. E. Kalman, J. Basic Eng. 82 (1960) 35-45. Covariances are kept as one triangle, so that they stay symmetric.</remarks>
internal struct Belief
{
    public const int Bias = 0, Rate = 1, Gain = 2, Reference = 3, Passing = 4;

    /// <summary>How many numbers.</summary>
    public const int Size = 5;

    /// <summary>How many numbers it consists of: the five, and the triangle of their covariances.</summary>
    public const int Numbers = Size + (Size * (Size + 1) / 2);

    private Five _mean;
    private Fifteen _spread;

    public readonly double Mean(int i) => _mean[i];

    public readonly double Variance(int i, int j) => _spread[At(i, j)];

    /// <summary>Sets one of the numbers, independent of all others.</summary>
    public void Set(int i, double mean, double variance)
    {
        _mean[i] = mean;
        for (var j = 0; j < Size; j++) _spread[At(i, j)] = 0;
        _spread[At(i, i)] = variance;
    }

    /// <summary>Moves one by a known amount.</summary>
    public void Shift(int i, double by) => _mean[i] += by;

    /// <summary>Owns up to not knowing one of them that well.</summary>
    public void Loosen(int i, double variance) => _spread[At(i, i)] += variance;

    /// <summary>The bias drifts on at its rate.</summary>
    public void Drift(double days)
    {
        _mean[Bias] += days * _mean[Rate];
        _spread[At(Bias, Bias)] += (2 * days * _spread[At(Bias, Rate)]) + (days * days * _spread[At(Rate, Rate)]);
        for (var j = 1; j < Size; j++) _spread[At(Bias, j)] += days * _spread[At(Rate, j)];
    }

    /// <summary>One number falls back towards 0 by a factor, and is stirred (Ornstein and Uhlenbeck).</summary>
    public void Relax(int i, double keeps, double stationary)
    {
        _mean[i] *= keeps;
        for (var j = 0; j < Size; j++) _spread[At(i, j)] *= j == i ? keeps * keeps : keeps;
        _spread[At(i, i)] += (1 - (keeps * keeps)) * stationary;
    }

    /// <summary>A weighted sum of the five, and its variance.</summary>
    public readonly (double Mean, double Variance) Along(in Five row)
    {
        var (mean, variance) = (0.0, 0.0);
        for (var i = 0; i < Size; i++)
        {
            if (row[i] == 0) continue;
            mean += row[i] * _mean[i];
            variance += row[i] * With(row, i);
        }

        return (mean, variance);
    }

    /// <summary>Takes in that the weighted sum was seen off by the innovation, with what the sum and its observation vary by together.</summary>
    public void Take(in Five row, double innovation, double total)
    {
        var pull = default(Five);
        for (var i = 0; i < Size; i++) pull[i] = With(row, i);
        for (var i = 0; i < Size; i++)
        {
            _mean[i] += pull[i] / total * innovation;
            for (var j = i; j < Size; j++) _spread[At(i, j)] -= pull[i] * pull[j] / total;
            // Rounding must not leave a variance below nothing.
            if (_spread[At(i, i)] < 0) _spread[At(i, i)] = 0;
        }
    }

    /// <summary>The Gaussian of the same mean and variance as a mixture of two.</summary>
    public void Mix(in Belief other, double share)
    {
        var apart = default(Five);
        for (var i = 0; i < Size; i++) apart[i] = other._mean[i] - _mean[i];
        for (var i = 0; i < Size; i++)
        {
            _mean[i] += share * apart[i];
            for (var j = i; j < Size; j++)
            {
                ref var held = ref _spread[At(i, j)];
                held += (share * (other._spread[At(i, j)] - held)) + (share * (1 - share) * apart[i] * apart[j]);
            }
        }
    }

    /// <summary>The numbers it consists of, one by one.</summary>
    public double this[int i]
    {
        readonly get => i < Size ? _mean[i] : _spread[i - Size];
        set
        {
            if (i < Size) _mean[i] = value;
            else _spread[i - Size] = value;
        }
    }

    // Most rows look at two or three of the five.
    private readonly double With(in Five row, int i)
    {
        var sum = 0.0;
        for (var j = 0; j < Size; j++)
            if (row[j] != 0) sum += row[j] * _spread[At(i, j)];
        return sum;
    }

    private static int At(int i, int j) => i <= j ? (i * (9 - i) / 2) + j : (j * (9 - j) / 2) + i;
}
