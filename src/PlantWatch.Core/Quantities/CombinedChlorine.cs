namespace PlantWatch.Core.Quantities;

/// <summary>Combined chlorine in mg/L as Cl2, 0 to 200. The default was never set and throws when read.</summary>
public readonly record struct CombinedChlorine : IQuantity<CombinedChlorine>, IComparable<CombinedChlorine>
{
    private readonly double _value;
    private readonly bool _isSet;

    private CombinedChlorine(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Combined chlorine in mg/L as Cl2.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(CombinedChlorine));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.CombinedChlorine;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 200.</exception>
    public static CombinedChlorine From(double value) => Quantity.From<CombinedChlorine>(value);

    static CombinedChlorine IQuantity<CombinedChlorine>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(CombinedChlorine other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(CombinedChlorine a, CombinedChlorine b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(CombinedChlorine a, CombinedChlorine b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(CombinedChlorine a, CombinedChlorine b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(CombinedChlorine a, CombinedChlorine b) => a._value >= b._value;
}
