using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The saturation index by the closed form of four logarithms: pHs = (9.3 + A + B) - (C + D).</summary>
/// <remarks>
/// A = (log10 TDS - 1)/10, B = -13.12 log10(T + 273) + 34.55, C = log10 CH - 0.4, D = log10 TA (P. Roberge, corrosion-doctors.org, with worked answers; published). An empirical fit,
/// fair from 0 to 90 degC; above 1000 mg/L its A corrects too little. Against the speciated model of 200 pool waters it is off by -0.24 to +0.21 (computed), hence the claim.
/// </remarks>
public static class ClosedFormIndex
{
    /// <summary>What the method may claim, +-, before the uncertainty of the tests is added.</summary>
    public const double Claim = 0.3;

    /// <summary>Water temperatures the form is fair for, in degC.</summary>
    public static ValueRange ValidCelsius { get; } = new(0, 90);

    /// <summary>Dissolved solids the form is used for, in mg/L; it is fair up to 1000.</summary>
    public static ValueRange ValidSolids { get; } = new(10, 10_000);

    private static readonly ValueRange Hardness = new(1, 5000);

    /// <summary>The index, or the first input outside its range.</summary>
    public static IndexResult Of(Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        var (celsius, calcium, alkalinity, solids) =
            (water.Temperature.Degrees, water.Calcium.MilligramsPerLitre, CarbonateAlkalinity.Of(water), water.Solids.MilligramsPerLitre);
        var check = new InputCheck().Within("temperature", celsius, ValidCelsius, "degC").Within("calcium", calcium, Hardness, "mg/L")
            .Within("carbonate_alkalinity", alkalinity, Hardness, "mg/L").Within("solids", solids, ValidSolids, "mg/L");
        return new(check.Then(() => water.Ph.Value - SaturationPh(celsius, solids, calcium, alkalinity)), Claim);
    }

    /// <summary>pH of saturation. All in the units of the water: degC, mg/L, hardness and alkalinity as CaCO3.</summary>
    public static double SaturationPh(double celsius, double solids, double calcium, double alkalinity)
    {
        var a = (Math.Log10(solids) - 1) / 10;
        var b = (-13.12 * Math.Log10(celsius + 273)) + 34.55;
        return 9.3 + a + b - (Math.Log10(calcium) - 0.4) - Math.Log10(alkalinity);
    }
}
