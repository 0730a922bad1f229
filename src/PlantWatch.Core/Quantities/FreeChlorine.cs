namespace PlantWatch.Core.Quantities;

/// <summary>Free chlorine in mg/L as Cl2, 0 to 200. The default was never set and throws when read.</summary>
public readonly record struct FreeChlorine : IQuantity<FreeChlorine>, IComparable<FreeChlorine>
{
    private readonly double value;
    private readonly bool isSet;

    private FreeChlorine(double value)
    {
        this.value = value;
        isSet = true;
    }

    /// <summary>Free chlorine in mg/L as Cl2.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(value, isSet, nameof(FreeChlorine));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.FreeChlorine;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 200.</exception>
    public static FreeChlorine From(double value) => Quantity.From<FreeChlorine>(value);

    static FreeChlorine IQuantity<FreeChlorine>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(FreeChlorine other) => value.CompareTo(other.value);

    /// <summary>Less than.</summary>
    public static bool operator <(FreeChlorine a, FreeChlorine b) => a.value < b.value;

    /// <summary>Greater than.</summary>
    public static bool operator >(FreeChlorine a, FreeChlorine b) => a.value > b.value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(FreeChlorine a, FreeChlorine b) => a.value <= b.value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(FreeChlorine a, FreeChlorine b) => a.value >= b.value;
}
