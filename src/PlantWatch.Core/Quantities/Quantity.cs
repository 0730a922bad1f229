namespace PlantWatch.Core.Quantities;

/// <summary>A checked quantity of the water: it can only be made inside its physical range, and reading one that was never set throws.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf> where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What it measures, which fixes unit, basis and physical range.</summary>
    static abstract Measurand Measurand { get; }

    /// <summary>Wraps a number already known to be inside the range.</summary>
    static abstract TSelf FromTrusted(double value);
}

/// <summary>The one way into a quantity from a plain number.</summary>
public static class Quantity
{
    /// <summary>Makes a quantity, or says no for NaN, infinity and what is physically impossible.</summary>
    public static bool TryFrom<T>(double value, out T quantity) where T : struct, IQuantity<T>
    {
        quantity = default;
        if (!T.Measurand.Possible().Contains(value)) return false;
        quantity = T.FromTrusted(value);
        return true;
    }

    /// <summary>Makes a quantity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or physically impossible.</exception>
    public static T From<T>(double value) where T : struct, IQuantity<T> =>
        TryFrom(value, out T quantity)
            ? quantity
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"not a possible {T.Measurand} in {T.Measurand.Unit()}");

    internal static double Set(double value, bool isSet, string type) =>
        isSet ? value : throw new InvalidOperationException($"this {type} was never set");
}
