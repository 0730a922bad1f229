namespace PlantWatch.Core.Quantities;

/// <summary>Cyanuric acid in mg/L, 0 to 1000. The default was never set and throws when read.</summary>
public readonly record struct CyanuricAcid : IQuantity<CyanuricAcid>, IComparable<CyanuricAcid>
{
    private readonly double _value;
    private readonly bool _isSet;

    private CyanuricAcid(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Cyanuric acid in mg/L.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(CyanuricAcid));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.CyanuricAcid;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 1000.</exception>
    public static CyanuricAcid From(double value) => Quantity.From<CyanuricAcid>(value);

    static CyanuricAcid IQuantity<CyanuricAcid>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(CyanuricAcid other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(CyanuricAcid a, CyanuricAcid b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(CyanuricAcid a, CyanuricAcid b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(CyanuricAcid a, CyanuricAcid b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(CyanuricAcid a, CyanuricAcid b) => a._value >= b._value;
}
