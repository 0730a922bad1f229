namespace PlantWatch.Core.Quantities;

/// <summary>Oxidation-reduction potential in mV against a named reference electrode, -1000 to 1200. The default was never set and throws when read.</summary>
public readonly record struct Millivolts : IQuantity<Millivolts>, IComparable<Millivolts>
{
    private readonly double _value;
    private readonly bool _isSet;

    private Millivolts(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Oxidation-reduction potential in mV against a named reference electrode.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double Value => Quantity.Set(_value, _isSet, nameof(Millivolts));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.Orp;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside -1000 to 1200.</exception>
    public static Millivolts From(double value) => Quantity.From<Millivolts>(value);

    static Millivolts IQuantity<Millivolts>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Millivolts other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(Millivolts a, Millivolts b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Millivolts a, Millivolts b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Millivolts a, Millivolts b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Millivolts a, Millivolts b) => a._value >= b._value;
}
