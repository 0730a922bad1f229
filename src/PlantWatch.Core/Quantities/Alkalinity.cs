namespace PlantWatch.Core.Quantities;

/// <summary>Total alkalinity in mg/L as CaCO3, 0 to 5000. The default was never set and throws when read.</summary>
public readonly record struct Alkalinity : IQuantity<Alkalinity>, IComparable<Alkalinity>
{
    private readonly double value;
    private readonly bool isSet;

    private Alkalinity(double value)
    {
        this.value = value;
        isSet = true;
    }

    /// <summary>Total alkalinity in mg/L as CaCO3.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(value, isSet, nameof(Alkalinity));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.TotalAlkalinity;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 5000.</exception>
    public static Alkalinity From(double value) => Quantity.From<Alkalinity>(value);

    static Alkalinity IQuantity<Alkalinity>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(Alkalinity other) => value.CompareTo(other.value);

    /// <summary>Less than.</summary>
    public static bool operator <(Alkalinity a, Alkalinity b) => a.value < b.value;

    /// <summary>Greater than.</summary>
    public static bool operator >(Alkalinity a, Alkalinity b) => a.value > b.value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Alkalinity a, Alkalinity b) => a.value <= b.value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Alkalinity a, Alkalinity b) => a.value >= b.value;
}
