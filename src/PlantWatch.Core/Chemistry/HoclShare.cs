using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The share of free chlorine that stands as hypochlorous acid, the part that disinfects, in water without cyanurate and without bromide.</summary>
/// <remarks>
/// Morris, J. Phys. Chem. 70:3798 (1966), the equation from memory; it agrees with the 7.54 at 25 degC of O'Brien, Morris and Butler (1974).
/// Fresh water: an ionic strength of 0.02 lowers the apparent pKa by about 0.05 (computed). With cyanuric acid most "free" chlorine is bound and this share does not hold.
/// </remarks>
public static class HoclShare
{
    /// <summary>Water temperatures the equation is used for, in degC.</summary>
    public static ValueRange ValidCelsius { get; } = new(5, 35);

    /// <summary>The share, or the name of what keeps it from being one.</summary>
    public static ShareResult Of(Ph ph, Celsius water) =>
        ValidCelsius.Contains(water.Degrees)
            ? ShareResult.Of(1 / (1 + Math.Pow(10, ph.Value - Pka(water.Degrees))))
            : ShareResult.Failed(ShareFailure.TemperatureOutsideRange);

    /// <summary>The share, 0 to 1; false outside the range of temperature.</summary>
    public static bool TryOf(Ph ph, Celsius water, out double share)
    {
        var result = Of(ph, water);
        share = result.IsKnown ? result.Share : 0;
        return result.IsKnown;
    }

    /// <summary>pKa of hypochlorous acid at a temperature in degC: 3000.00/T - 10.0686 + 0.0253 T, T in kelvin.</summary>
    public static double Pka(double celsius) => -Dissociation.At(celsius);

    /// <summary>log K of HOCl = H+ + OCl-, the one place for it.</summary>
    internal static LogK Dissociation { get; } = new(10.0686, -0.0253, -3000.00);
}

/// <summary>What keeps a share from being computed.</summary>
public enum ShareFailure
{
    /// <summary>Nothing was computed.</summary>
    NotComputed = 0,
    /// <summary>None: there is a share.</summary>
    None,
    /// <summary>The water is colder or warmer than the equation is good for.</summary>
    TemperatureOutsideRange,
}

/// <summary>A share from 0 to 1, or why there is none. The default is not computed.</summary>
public readonly record struct ShareResult
{
    private readonly double _share;

    private ShareResult(double share, ShareFailure failure)
    {
        _share = share;
        Failure = failure;
    }

    /// <summary>Why there is no share; <see cref="ShareFailure.None"/> when there is one.</summary>
    public ShareFailure Failure { get; }

    /// <summary>True when there is a share.</summary>
    public bool IsKnown => Failure == ShareFailure.None;

    /// <summary>The share, 0 to 1.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public double Share => IsKnown ? _share : throw new InvalidOperationException($"no share: {Failure}");

    internal static ShareResult Of(double share) => new(share, ShareFailure.None);

    internal static ShareResult Failed(ShareFailure failure) => new(0, failure);
}
