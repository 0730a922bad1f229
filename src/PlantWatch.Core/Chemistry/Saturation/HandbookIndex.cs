using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The water a saturation index is made of.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Temperature">Water temperature.</param>
/// <param name="Alkalinity">Total alkalinity.</param>
/// <param name="Calcium">Calcium hardness.</param>
/// <param name="Solids">Total dissolved solids.</param>
/// <param name="Cyanurate">Cyanuric acid; null when there is none or it was never tested. It counts as alkalinity in the test but holds no carbonate.</param>
public readonly record struct BalanceWater(
    Ph Ph, Celsius Temperature, Alkalinity Alkalinity, CalciumHardness Calcium, DissolvedSolids Solids, CyanuricAcid? Cyanurate = null);

/// <summary>The saturation index by the handbook's factor tables: pH + temperature factor + calcium factor + alkalinity factor - constant.</summary>
/// <remarks>
/// Method and tables: 10 CRR-NY 6-1.30; its worked example interpolates in a straight line between rows, as here. Against a speciated model of
/// 200 pool waters the method is off by -0.29 to +0.28 (computed), hence the claim.
/// </remarks>
public static class HandbookIndex
{
    /// <summary>What the method may claim, +-, before the uncertainty of the tests is added.</summary>
    public const double Claim = 0.3;

    /// <summary>The index, or the first input that lies outside its table.</summary>
    public static IndexResult Of(BalanceWater water)
    {
        var fahrenheit = (water.Temperature.Degrees * 9 / 5) + 32;
        if (!HandbookFactors.Temperature.TryAt(fahrenheit, out var temperature)) return Outside(IndexFailure.TemperatureOutsideTable);
        if (!HandbookFactors.Calcium.TryAt(water.Calcium.MilligramsPerLitre, out var calcium)) return Outside(IndexFailure.CalciumOutsideTable);
        if (!HandbookFactors.Alkalinity.TryAt(CarbonateAlkalinity(water), out var alkalinity)) return Outside(IndexFailure.AlkalinityOutsideTable);
        var index = water.Ph.Value + temperature + calcium + alkalinity - HandbookFactors.Constant(water.Solids.MilligramsPerLitre);
        return IndexResult.Of(index, Claim, cyanurateIgnored: water.Cyanurate is { MilligramsPerLitre: > 0 });
    }

    /// <summary>The range of an input in its table, in the unit of the input (degC for temperature); for the words of a refusal.</summary>
    public static ValueRange TableOf(IndexFailure failure) => failure switch
    {
        IndexFailure.TemperatureOutsideTable => new((HandbookFactors.Temperature.Range.Low - 32) * 5 / 9, (HandbookFactors.Temperature.Range.High - 32) * 5 / 9),
        IndexFailure.CalciumOutsideTable => HandbookFactors.Calcium.Range,
        IndexFailure.AlkalinityOutsideTable => HandbookFactors.Alkalinity.Range,
        _ => default,
    };

    // The one place for the share of alkalinity that cyanurate holds; until it is computed the result says that it was ignored.
    private static double CarbonateAlkalinity(BalanceWater water) => water.Alkalinity.MilligramsPerLitre;

    private static IndexResult Outside(IndexFailure failure) => IndexResult.Failed(failure, Claim);
}
