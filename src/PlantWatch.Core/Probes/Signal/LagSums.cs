namespace PlantWatch.Core.Probes;

/// <summary>
/// Squares of changes over one block, and products of neighbouring changes over 2, 4, 8, 16 and 32 blocks: in a product of two changes that share no block white noise drops out. The default holds none.
/// </summary>
/// <param name="L1">Squares over one block, white noise included.</param>
/// <param name="L2">Over 2 blocks.</param>
/// <param name="L4">Over 4 blocks.</param>
/// <param name="L8">Over 8 blocks.</param>
/// <param name="L16">Over 16 blocks.</param>
/// <param name="L32">Over 32 blocks.</param>
public readonly record struct LagSums(LagSum L1, LagSum L2, LagSum L4, LagSum L8, LagSum L16, LagSum L32)
{
    /// <summary>Lags, the single block apart.</summary>
    internal const int Lags = 5;

    /// <summary>The lag of that number in blocks: 2, 4, 8, 16, 32.</summary>
    internal static int LagOf(int i) => 2 << i;

    internal LagSum this[int i] => i switch { 0 => L2, 1 => L4, 2 => L8, 3 => L16, _ => L32 };

    /// <summary>Takes the newest block in; no change counts for more than so many times the usual.</summary>
    internal LagSums Take(BlockRing ring, in LagSums usual, double most)
    {
        var one = ring[0] - ring[1];
        return new(
            L1.Add(one * one, usual.L1.Mean * most), L2.Add(Product(ring, 2), usual.L2.Mean * most), L4.Add(Product(ring, 4), usual.L4.Mean * most),
            L8.Add(Product(ring, 8), usual.L8.Mean * most), L16.Add(Product(ring, 16), usual.L16.Mean * most), L32.Add(Product(ring, 32), usual.L32.Mean * most));
    }

    /// <summary>Both together.</summary>
    internal LagSums Plus(in LagSums o) => new(L1 + o.L1, L2 + o.L2, L4 + o.L4, L8 + o.L8, L16 + o.L16, L32 + o.L32);

    /// <summary>Half of the weight, the same means.</summary>
    internal LagSums Half() => new(L1.Half(), L2.Half(), L4.Half(), L8.Half(), L16.Half(), L32.Half());

    /// <summary>Means moved towards another's by a weight.</summary>
    internal LagSums Towards(in LagSums o, double weight) => new(
        L1.Towards(o.L1, weight), L2.Towards(o.L2, weight), L4.Towards(o.L4, weight), L8.Towards(o.L8, weight), L16.Towards(o.L16, weight), L32.Towards(o.L32, weight));

    private static double Product(BlockRing ring, int lag) => (ring[0] - ring[lag]) * (ring[1] - ring[lag + 1]);
}

/// <summary>A sum and how many it is of. The default is none.</summary>
/// <param name="Sum">The sum, in the square of the measurand's unit.</param>
/// <param name="N">How many.</param>
public readonly record struct LagSum(float Sum, int N)
{
    internal double Mean => N > 0 ? Sum / N : 0;

    internal LagSum Add(double product, double most) =>
        double.IsNaN(product) ? this : new((float)(Sum + (most > 0 ? Math.Clamp(product, -most, most) : product)), N + 1);

    internal LagSum Half() => new(Sum / 2, N / 2);

    internal LagSum Towards(in LagSum other, double weight) =>
        other.N == 0 ? this : N == 0 ? new((float)other.Mean, 1) : new((float)(Sum + (weight * (other.Mean - Sum))), 1);

    /// <summary>Both together.</summary>
    public static LagSum operator +(LagSum a, LagSum b) => new(a.Sum + b.Sum, a.N + b.N);
}
