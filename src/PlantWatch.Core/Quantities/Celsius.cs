namespace PlantWatch.Core.Quantities;

/// <summary>Temperature in degC, -5 to 110. The default was never set and throws when read.</summary>
public readonly record struct Celsius : IQuantity<Celsius>, IComparable<Celsius>
{
    private readonly double _value;
    private readonly bool _isSet;

    private Celsius(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Temperature in degC.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double Degrees => Quantity.Set(_value, _isSet, nameof(Celsius));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.Temperature;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside -5 to 110.</exception>
    public static Celsius From(double value) => Quantity.From<Celsius>(value);

    static Celsius IQuantity<Celsius>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Celsius other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(Celsius a, Celsius b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Celsius a, Celsius b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Celsius a, Celsius b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Celsius a, Celsius b) => a._value >= b._value;
}
