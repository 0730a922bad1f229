using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>One factor table of a handbook: linear between its rows, and silent outside them.</summary>
internal sealed class FactorTable((double At, double Factor)[] rows)
{
    /// <summary>First and last row.</summary>
    public ValueRange Range { get; } = new(rows[0].At, rows[^1].At);

    /// <summary>The factor by straight line between the two rows around a value; false outside the table.</summary>
    public bool TryAt(double value, out double factor)
    {
        factor = 0;
        if (!Range.Contains(value)) return false;
        var upper = 1;
        while (rows[upper].At < value) upper++;
        var (low, high) = (rows[upper - 1], rows[upper]);
        factor = low.Factor + ((high.Factor - low.Factor) * (value - low.At) / (high.At - low.At));
        return true;
    }

    /// <summary>The factor where the value was already found to lie in the table.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It does not.</exception>
    public double At(double value) => TryAt(value, out var factor) ? factor : throw new ArgumentOutOfRangeException(nameof(value), value, "outside the table");
}
