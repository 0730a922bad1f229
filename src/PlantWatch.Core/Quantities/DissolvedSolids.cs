namespace PlantWatch.Core.Quantities;

/// <summary>Total dissolved solids in mg/L, 0 to 100000. The default was never set and throws when read.</summary>
public readonly record struct DissolvedSolids : IQuantity<DissolvedSolids>, IComparable<DissolvedSolids>
{
    private readonly double _value;
    private readonly bool _isSet;

    private DissolvedSolids(double value)
    {
        _value = value;
        _isSet = true;
    }

    /// <summary>Total dissolved solids in mg/L.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(_value, _isSet, nameof(DissolvedSolids));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.DissolvedSolids;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 100000.</exception>
    public static DissolvedSolids From(double value) => Quantity.From<DissolvedSolids>(value);

    static DissolvedSolids IQuantity<DissolvedSolids>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(DissolvedSolids other) => _value.CompareTo(other._value);

    /// <summary>Less than.</summary>
    public static bool operator <(DissolvedSolids a, DissolvedSolids b) => a._value < b._value;

    /// <summary>Greater than.</summary>
    public static bool operator >(DissolvedSolids a, DissolvedSolids b) => a._value > b._value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(DissolvedSolids a, DissolvedSolids b) => a._value <= b._value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(DissolvedSolids a, DissolvedSolids b) => a._value >= b._value;
}
