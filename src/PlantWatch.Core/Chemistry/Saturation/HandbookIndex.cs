using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The saturation index by the handbook's factor tables: pH + temperature factor + calcium factor + alkalinity factor - constant.</summary>
/// <remarks>
/// Method and tables: 10 CRR-NY 6-1.30; its worked example interpolates in a straight line between rows, as here. Against a speciated model of
/// 200 pool waters the method is off by -0.29 to +0.28 (computed), hence the claim.
/// </remarks>
public static class HandbookIndex
{
    /// <summary>What the method may claim, +-, before the uncertainty of the tests is added.</summary>
    public const double Claim = 0.3;

    /// <summary>Water temperatures of the table, in degC.</summary>
    public static ValueRange ValidCelsius { get; } = new((HandbookFactors.Temperature.Range.Low - 32) * 5 / 9, (HandbookFactors.Temperature.Range.High - 32) * 5 / 9);

    /// <summary>Calcium hardness of the table, in mg/L as CaCO3.</summary>
    public static ValueRange ValidCalcium => HandbookFactors.Calcium.Range;

    /// <summary>Carbonate alkalinity of the table, in mg/L as CaCO3.</summary>
    public static ValueRange ValidAlkalinity => HandbookFactors.Alkalinity.Range;

    /// <summary>The index, or the first input that lies outside its table.</summary>
    public static IndexResult Of(Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        var (celsius, calcium, alkalinity) = (water.Temperature.Degrees, water.Calcium.MilligramsPerLitre, CarbonateAlkalinity.Of(water));
        var check = new InputCheck().Within("temperature", celsius, ValidCelsius, "degC")
            .Within("calcium", calcium, ValidCalcium, "mg/L").Within("carbonate_alkalinity", alkalinity, ValidAlkalinity, "mg/L");
        return new(check.Then(() => water.Ph.Value - SaturationPh(celsius, calcium, alkalinity, water.Solids.MilligramsPerLitre)), Claim);
    }

    private static double SaturationPh(double celsius, double calcium, double alkalinity, double solids) =>
        HandbookFactors.Constant(solids) - HandbookFactors.Temperature.At((celsius * 9 / 5) + 32) - HandbookFactors.Calcium.At(calcium) - HandbookFactors.Alkalinity.At(alkalinity);
}
