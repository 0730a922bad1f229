namespace PlantWatch.Core.Quantities;

/// <summary>pH on the activity scale, 0 to 14. The default was never set and throws when read.</summary>
public readonly record struct Ph : IQuantity<Ph>, IComparable<Ph>
{
    private readonly double value;
    private readonly bool isSet;

    private Ph(double value)
    {
        this.value = value;
        isSet = true;
    }

    /// <summary>pH on the activity scale.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double Value => Quantity.Set(value, isSet, nameof(Ph));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.Ph;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 14.</exception>
    public static Ph From(double value) => Quantity.From<Ph>(value);

    static Ph IQuantity<Ph>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Ph other) => value.CompareTo(other.value);

    /// <summary>Less than.</summary>
    public static bool operator <(Ph a, Ph b) => a.value < b.value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Ph a, Ph b) => a.value > b.value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Ph a, Ph b) => a.value <= b.value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Ph a, Ph b) => a.value >= b.value;
}
