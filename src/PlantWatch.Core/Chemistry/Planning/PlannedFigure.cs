using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The figures of a water that a dosing plan brings inside their bands.</summary>
public enum PlannedFigure
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>pH.</summary>
    Ph,
    /// <summary>Total alkalinity, mg/L as CaCO3.</summary>
    TotalAlkalinity,
    /// <summary>Calcium hardness, mg/L as CaCO3.</summary>
    CalciumHardness,
    /// <summary>Free chlorine, mg/L as Cl2.</summary>
    FreeChlorine,
    /// <summary>Cyanuric acid, mg/L.</summary>
    CyanuricAcid,
    /// <summary>Dissolved solids, mg/L.</summary>
    DissolvedSolids,
    /// <summary>Saturation index of calcite.</summary>
    SaturationIndex,
}

/// <summary>What is fixed about each figure.</summary>
public static class PlannedFigures
{
    /// <summary>All of them, in the order in which people read a water.</summary>
    public static IReadOnlyList<PlannedFigure> All { get; } =
    [
        PlannedFigure.Ph, PlannedFigure.TotalAlkalinity, PlannedFigure.CalciumHardness, PlannedFigure.FreeChlorine, PlannedFigure.CyanuricAcid, PlannedFigure.DissolvedSolids,
        PlannedFigure.SaturationIndex,
    ];

    /// <summary>The figure of a water.</summary>
    /// <param name="water">The water.</param>
    /// <param name="figure">Which.</param>
    public static double Of(Speciation water, PlannedFigure figure)
    {
        ArgumentNullException.ThrowIfNull(water);
        return figure switch
        {
            PlannedFigure.Ph => water.Ph,
            PlannedFigure.SaturationIndex => water.SaturationIndex,
            _ => Of(water.Composition, figure),
        };
    }

    /// <summary>What is tested for it; none for the saturation index, which is worked out.</summary>
    public static Measurand Measurand(this PlannedFigure figure) => figure switch
    {
        PlannedFigure.Ph => Quantities.Measurand.Ph,
        PlannedFigure.TotalAlkalinity => Quantities.Measurand.TotalAlkalinity,
        PlannedFigure.CalciumHardness => Quantities.Measurand.CalciumHardness,
        PlannedFigure.FreeChlorine => Quantities.Measurand.FreeChlorine,
        PlannedFigure.CyanuricAcid => Quantities.Measurand.CyanuricAcid,
        PlannedFigure.DissolvedSolids => Quantities.Measurand.DissolvedSolids,
        _ => Quantities.Measurand.None,
    };

    /// <summary>The figure's key in words, such as <c>total_alkalinity</c>.</summary>
    public static string Key(this PlannedFigure figure) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(figure.ToString());

    /// <summary>True for what is proportional to the amounts in the water, so that doses add up exactly.</summary>
    internal static bool IsLinear(PlannedFigure figure) => figure is not (PlannedFigure.Ph or PlannedFigure.SaturationIndex);

    /// <summary>A proportional figure of a composition, or of a change of one.</summary>
    internal static double Of(Composition c, PlannedFigure figure) => figure switch
    {
        PlannedFigure.TotalAlkalinity => Masses.Milligrams(WaterRecipe.Alkalinity(c), Masses.AlkalinityEquivalent),
        PlannedFigure.CalciumHardness => Masses.Milligrams(c.Calcium, Masses.CalciumCarbonate),
        PlannedFigure.FreeChlorine => Masses.Milligrams(c.Chlorine, Masses.Chlorine),
        PlannedFigure.CyanuricAcid => Masses.Milligrams(c.Cyanurate, Masses.CyanuricAcid),
        PlannedFigure.DissolvedSolids => Masses.Milligrams(c.Calcium, Masses.Calcium) + Masses.Milligrams(c.Sodium, Masses.Sodium)
            + Masses.Milligrams(c.Chloride, Masses.Chloride) + Masses.Milligrams(c.Sulfate, Masses.Sulfate)
            + Masses.Milligrams(WaterRecipe.Alkalinity(c), Masses.Bicarbonate),
        _ => throw new ArgumentOutOfRangeException(nameof(figure), figure, "pH and saturation follow from the equilibrium"),
    };

    /// <summary>A deviation that an operator would call one step: what misses of different figures are weighed by.</summary>
    internal static double Step(PlannedFigure figure) => figure switch
    {
        PlannedFigure.Ph or PlannedFigure.SaturationIndex => 0.1,
        PlannedFigure.TotalAlkalinity => 10,
        PlannedFigure.CalciumHardness => 20,
        PlannedFigure.FreeChlorine => 0.5,
        PlannedFigure.CyanuricAcid => 5,
        _ => 100,
    };

    /// <summary>How far a worked-out figure may lie beyond a band and still count as inside: far below what any test can see.</summary>
    public static double Tolerance(PlannedFigure figure) => 0.01 * Step(figure);
}
