namespace PlantWatch.Core.Quantities;

/// <summary>Total alkalinity in mg/L as CaCO3, 0 to 5000. The default was never set and throws when read.</summary>
public readonly record struct Alkalinity : IQuantity<Alkalinity>, IComparable<Alkalinity>
{
    private readonly double _value;
    private readonly bool _isSet;

    private Alkalinity(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Total alkalinity in mg/L as CaCO3.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(Alkalinity));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.TotalAlkalinity;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 5000.</exception>
    public static Alkalinity From(double value) => Quantity.From<Alkalinity>(value);

    static Alkalinity IQuantity<Alkalinity>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Alkalinity other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(Alkalinity a, Alkalinity b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Alkalinity a, Alkalinity b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Alkalinity a, Alkalinity b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Alkalinity a, Alkalinity b) => a._value >= b._value;
}
