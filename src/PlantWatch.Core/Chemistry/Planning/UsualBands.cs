using System.Collections.Immutable;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>The bands of a pool: the limits of its plant file, and where those are silent the handbook's aims.</summary>
/// <remarks>
/// Handbook aims are common practice, not a rule anywhere: pH 7.2 to 7.6, alkalinity 80 to 120, calcium hardness 200 to 400 (spa 150 to 250), free chlorine 1 to 3 (with cyanuric acid 2 to 4, spa 3 to 5),
/// cyanuric acid 30 to 50 where the pool is run with it, dissolved solids up to 1500 where no salt is kept, saturation index -0.3 to +0.5 (slightly scale-forming is the safer side).
/// </remarks>
public static class UsualBands
{
    /// <summary>Cyanuric acid in mg/L up to which a stabilised pool is run where the plant has set no limit (common practice): from there on none is added.</summary>
    public const double MostCyanurate = 50;

    /// <summary>The bands of a pool, each end with its source.</summary>
    /// <param name="pool">The pool as the plant file has it.</param>
    public static ImmutableArray<Band> Of(PoolPlan pool)
    {
        ArgumentNullException.ThrowIfNull(pool);
        return [.. PlannedFigures.All.Select(figure => Of(pool, figure)).OfType<Band>()];
    }

    private static Band? Of(PoolPlan pool, PlannedFigure figure)
    {
        if (figure == PlannedFigure.FreeChlorine && pool.Disinfectant == Disinfectant.Bromine) return null;
        var (low, high) = Aim(pool, figure);
        var limits = pool.Limits.Where(l => l.Measurand == figure.Measurand() && figure != PlannedFigure.SaturationIndex).ToArray();
        if (limits.Length == 0) return low is null && high is null ? null : new(figure, low, high);
        var lowest = limits.Where(l => l.Low is not null).MaxBy(l => l.Low);
        var highest = limits.Where(l => l.High is not null).MinBy(l => l.High);
        // A handbook aim fills an open end only where it leaves room.
        if (lowest is not null && high <= lowest.Low) high = null;
        if (highest is not null && low >= highest.High) low = null;
        return new(figure, lowest?.Low ?? low, highest?.High ?? high) { LowSource = lowest?.Source, HighSource = highest?.Source };
    }

    private static (double? Low, double? High) Aim(PoolPlan pool, PlannedFigure figure) => figure switch
    {
        PlannedFigure.Ph => (7.2, 7.6),
        PlannedFigure.TotalAlkalinity => (80, 120),
        PlannedFigure.CalciumHardness => pool.Kind == PoolKind.Spa ? (150, 250) : (200, 400),
        PlannedFigure.FreeChlorine => pool.Kind == PoolKind.Spa ? (3, 5) : pool.Disinfectant == Disinfectant.StabilisedChlorine ? (2, 4) : (1, 3),
        PlannedFigure.CyanuricAcid when pool.Disinfectant == Disinfectant.StabilisedChlorine => (30, MostCyanurate),
        PlannedFigure.DissolvedSolids when pool.Disinfectant != Disinfectant.SaltElectrolysis => (null, 1500),
        PlannedFigure.SaturationIndex => (-0.3, IndexResult.Tolerance),
        _ => (null, null),
    };
}
