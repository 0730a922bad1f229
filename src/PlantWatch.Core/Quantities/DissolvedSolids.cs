namespace PlantWatch.Core.Quantities;

/// <summary>Total dissolved solids in mg/L, 0 to 100000. The default was never set and throws when read.</summary>
public readonly record struct DissolvedSolids : IQuantity<DissolvedSolids>, IComparable<DissolvedSolids>
{
    private readonly double value;
    private readonly bool isSet;

    private DissolvedSolids(double value)
    {
        this.value = value;
        isSet = true;
    }

    /// <summary>Total dissolved solids in mg/L.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(value, isSet, nameof(DissolvedSolids));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.DissolvedSolids;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 100000.</exception>
    public static DissolvedSolids From(double value) => Quantity.From<DissolvedSolids>(value);

    static DissolvedSolids IQuantity<DissolvedSolids>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(DissolvedSolids other) => value.CompareTo(other.value);

    /// <summary>Less than.</summary>
    public static bool operator <(DissolvedSolids a, DissolvedSolids b) => a.value < b.value;

    /// <summary>Greater than.</summary>
    public static bool operator >(DissolvedSolids a, DissolvedSolids b) => a.value > b.value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(DissolvedSolids a, DissolvedSolids b) => a.value <= b.value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(DissolvedSolids a, DissolvedSolids b) => a.value >= b.value;
}
