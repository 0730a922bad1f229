using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>A tested figure with its expanded uncertainty, k = 2. The default is a figure of 0 that claims to be exact.</summary>
/// <param name="Value">The figure.</param>
/// <param name="U">Expanded uncertainty; 0 when none is claimed.</param>
public readonly record struct Tested(double Value, double U = 0);

/// <summary>A water as it was tested. What is null was not, and what needs it is not planned.</summary>
public sealed record TestedWater
{
    /// <summary>pH.</summary>
    public Tested? Ph { get; init; }

    /// <summary>Temperature, degC.</summary>
    public double? Celsius { get; init; }

    /// <summary>Total alkalinity, mg/L as CaCO3.</summary>
    public Tested? Alkalinity { get; init; }

    /// <summary>Calcium hardness, mg/L as CaCO3.</summary>
    public Tested? Calcium { get; init; }

    /// <summary>Free chlorine, mg/L as Cl2.</summary>
    public Tested? FreeChlorine { get; init; }

    /// <summary>Cyanuric acid, mg/L.</summary>
    public Tested? Cyanurate { get; init; }

    /// <summary>Dissolved solids, mg/L.</summary>
    public Tested? Solids { get; init; }

    /// <summary>True when the saturation index can be had.</summary>
    public bool HasIndex => Calcium is not null && Solids is not null;

    /// <summary>The water worked out; null when too little is known of it. An input that no water can have is named by the caller before.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure that no water can have.</exception>
    public EquilibriumResult? Speciate() => this is { Ph: { } ph, Celsius: { } celsius, Alkalinity: { } alkalinity }
        ? Equilibrium.Speciate(new Water(
            Quantities.Ph.From(ph.Value), Quantities.Celsius.From(celsius), Quantities.Alkalinity.From(alkalinity.Value), CalciumHardness.From(Calcium?.Value ?? 0),
            DissolvedSolids.From(Solids?.Value ?? 0))
        {
            Cyanurate = CyanuricAcid.From(Cyanurate?.Value ?? 0), FreeChlorine = Quantities.FreeChlorine.From(FreeChlorine?.Value ?? 0),
        })
        : null;

    /// <summary>The tested figure; null for what was not tested. The uncertainty of the saturation index follows from those of its inputs and of the model.</summary>
    public Tested? Of(PlannedFigure figure, Speciation water) => figure switch
    {
        PlannedFigure.Ph => Ph,
        PlannedFigure.TotalAlkalinity => Alkalinity,
        PlannedFigure.CalciumHardness => Calcium,
        PlannedFigure.FreeChlorine => FreeChlorine,
        PlannedFigure.CyanuricAcid => Cyanurate,
        PlannedFigure.DissolvedSolids => Solids,
        PlannedFigure.SaturationIndex when HasIndex && double.IsFinite(water?.SaturationIndex ?? double.NaN) => new(water!.SaturationIndex, UOfIndex()),
        _ => null,
    };

    // The index goes up one for one with pH and with the logarithms of hardness and alkalinity. Where nobody claims uncertainty the model's is not claimed either.
    private double UOfIndex()
    {
        double[] parts = [Ph?.U ?? 0, OfLog(Alkalinity), OfLog(Calcium)];
        return parts.All(p => p == 0) ? 0 : Math.Sqrt(parts.Sum(p => p * p) + (4 * Equilibrium.ModelUncertainty * Equilibrium.ModelUncertainty));
    }

    private static double OfLog(Tested? tested) => tested is { Value: > 0 } known ? known.U / known.Value / Math.Log(10) : 0;
}
