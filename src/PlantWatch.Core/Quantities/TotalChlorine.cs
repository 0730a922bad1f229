namespace PlantWatch.Core.Quantities;

/// <summary>Total chlorine in mg/L as Cl2, 0 to 200. The default was never set and throws when read.</summary>
public readonly record struct TotalChlorine : IQuantity<TotalChlorine>, IComparable<TotalChlorine>
{
    private readonly double _value;
    private readonly bool _isSet;

    private TotalChlorine(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Total chlorine in mg/L as Cl2.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(TotalChlorine));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.TotalChlorine;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 200.</exception>
    public static TotalChlorine From(double value) => Quantity.From<TotalChlorine>(value);

    static TotalChlorine IQuantity<TotalChlorine>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(TotalChlorine other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(TotalChlorine a, TotalChlorine b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(TotalChlorine a, TotalChlorine b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(TotalChlorine a, TotalChlorine b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(TotalChlorine a, TotalChlorine b) => a._value >= b._value;
}
