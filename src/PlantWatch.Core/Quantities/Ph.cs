namespace PlantWatch.Core.Quantities;

/// <summary>pH on the activity scale, 0 to 14. The default was never set and throws when read.</summary>
public readonly record struct Ph : IQuantity<Ph>, IComparable<Ph>
{
    private readonly double _value;
    private readonly bool _isSet;

    private Ph(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>pH on the activity scale.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double Value => Quantity.Set(_value, _isSet, nameof(Ph));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.Ph;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 14.</exception>
    public static Ph From(double value) => Quantity.From<Ph>(value);

    static Ph IQuantity<Ph>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Ph other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(Ph a, Ph b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Ph a, Ph b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Ph a, Ph b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Ph a, Ph b) => a._value >= b._value;
}
