using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>One factor table of a handbook: linear between its rows, and silent outside them.</summary>
internal sealed class FactorTable((double At, double Factor)[] rows)
{
    /// <summary>First and last row.</summary>
    public ValueRange Range { get; } = new(rows[0].At, rows[^1].At);

    /// <summary>The factor by straight line between the two rows around a value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside the table.</exception>
    public double At(double value)
    {
        if (!Range.Contains(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "outside the table");
        var upper = 1;
        while (rows[upper].At < value) upper++;
        var (low, high) = (rows[upper - 1], rows[upper]);
        return low.Factor + ((high.Factor - low.Factor) * (value - low.At) / (high.At - low.At));
    }
}
