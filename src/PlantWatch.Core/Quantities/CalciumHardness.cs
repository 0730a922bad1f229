namespace PlantWatch.Core.Quantities;

/// <summary>Calcium hardness in mg/L as CaCO3, 0 to 5000. The default was never set and throws when read.</summary>
public readonly record struct CalciumHardness : IQuantity<CalciumHardness>, IComparable<CalciumHardness>
{
    private readonly double _value;
    private readonly bool _isSet;

    private CalciumHardness(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(CalciumHardness));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.CalciumHardness;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 5000.</exception>
    public static CalciumHardness From(double value) => Quantity.From<CalciumHardness>(value);

    static CalciumHardness IQuantity<CalciumHardness>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(CalciumHardness other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(CalciumHardness a, CalciumHardness b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(CalciumHardness a, CalciumHardness b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(CalciumHardness a, CalciumHardness b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(CalciumHardness a, CalciumHardness b) => a._value >= b._value;
}
