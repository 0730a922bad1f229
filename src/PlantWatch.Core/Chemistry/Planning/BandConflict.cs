using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Whether the bands of pH, alkalinity and hardness leave the band of saturation any room at all, whatever is added.</summary>
/// <remarks>Saturation rises with all three, so that the corners of their bands bound it.</remarks>
internal static class BandConflict
{
    /// <summary>The conflict; null when there is none.</summary>
    public static Reason? Between(IReadOnlyList<Aim> aims, Speciation now)
    {
        if (aims.FirstOrDefault(a => a.Figure == PlannedFigure.SaturationIndex && a.Now is not null) is not { } index) return null;
        if (index.High is { } high && Corner(aims, now, isLow: true) is { } least && least > high.Must + Slack)
            return Reason.Of("plan.index_always_above", least, high.Must);
        if (index.Low is { } low && Corner(aims, now, isLow: false) is { } most && most < low.Must - Slack)
            return Reason.Of("plan.index_always_below", most, low.Must);
        return null;
    }

    // Salt moves the index by a few hundredths.
    private const double Slack = 0.05;

    private static double? Corner(IReadOnlyList<Aim> aims, Speciation now, bool isLow)
    {
        if (End(aims, PlannedFigure.Ph, isLow) is not { } ph || End(aims, PlannedFigure.TotalAlkalinity, isLow) is not { } alkalinity
            || End(aims, PlannedFigure.CalciumHardness, isLow) is not { } calcium || !Equilibrium.ValidPh.Contains(ph)) return null;
        var water = new Water(Ph.From(ph), Celsius.From(now.Temperature), Alkalinity.From(alkalinity), CalciumHardness.From(calcium), DissolvedSolids.From(Math.Max(0, now.DissolvedSolids)))
        {
            Cyanurate = CyanuricAcid.From(Math.Max(0, now.Cyanurate)),
        };
        return Equilibrium.Speciate(water) is { IsKnown: true } there && double.IsFinite(there.Value.SaturationIndex) ? there.Value.SaturationIndex : null;
    }

    private static double? End(IReadOnlyList<Aim> aims, PlannedFigure figure, bool isLow) =>
        aims.FirstOrDefault(a => a.Figure == figure) is { } aim ? (isLow ? aim.Low?.Must : aim.High?.Must) : null;
}
