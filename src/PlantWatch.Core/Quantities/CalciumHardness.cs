namespace PlantWatch.Core.Quantities;

/// <summary>Calcium hardness in mg/L as CaCO3, 0 to 5000. The default was never set and throws when read.</summary>
public readonly record struct CalciumHardness : IQuantity<CalciumHardness>, IComparable<CalciumHardness>
{
    private readonly double value;
    private readonly bool isSet;

    private CalciumHardness(double value)
    {
        this.value = value;
        isSet = true;
    }

    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    /// <exception cref="InvalidOperationException">This is the default, which was never set.</exception>
    public double MilligramsPerLitre => Quantity.Set(value, isSet, nameof(CalciumHardness));

    /// <inheritdoc/>
    public static Measurand Measurand => Measurand.CalciumHardness;

    /// <summary>Makes one from a number in the unit above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or outside 0 to 5000.</exception>
    public static CalciumHardness From(double value) => Quantity.From<CalciumHardness>(value);

    static CalciumHardness IQuantity<CalciumHardness>.FromTrusted(double value) => new(value);

    /// <inheritdoc/>
    public int CompareTo(CalciumHardness other) => value.CompareTo(other.value);

    /// <summary>Less than.</summary>
    public static bool operator <(CalciumHardness a, CalciumHardness b) => a.value < b.value;

    /// <summary>Greater than.</summary>
    public static bool operator >(CalciumHardness a, CalciumHardness b) => a.value > b.value;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(CalciumHardness a, CalciumHardness b) => a.value <= b.value;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(CalciumHardness a, CalciumHardness b) => a.value >= b.value;
}
