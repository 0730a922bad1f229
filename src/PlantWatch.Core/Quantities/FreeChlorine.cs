namespace PlantWatch.Core.Quantities;

/// <summary>Free chlorine in mg/L as Cl2, 0 to 200. The default was never set and throws when read.</summary>
public readonly record struct FreeChlorine : IQuantity<FreeChlorine>, IComparable<FreeChlorine>
{
    private readonly double _value;
    private readonly bool _isSet;

    private FreeChlorine(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Free chlorine in mg/L as Cl2.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(FreeChlorine));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.FreeChlorine;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 200.</exception>
    public static FreeChlorine From(double value) => Quantity.From<FreeChlorine>(value);

    static FreeChlorine IQuantity<FreeChlorine>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(FreeChlorine other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(FreeChlorine a, FreeChlorine b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(FreeChlorine a, FreeChlorine b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(FreeChlorine a, FreeChlorine b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(FreeChlorine a, FreeChlorine b) => a._value >= b._value;
}
