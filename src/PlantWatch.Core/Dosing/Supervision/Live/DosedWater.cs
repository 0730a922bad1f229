using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision.Live;

/// <summary>A pump of a dosed water, as the plant file has it.</summary>
/// <param name="Index">Its place among the pumps of the circuit.</param>
/// <param name="MillilitresPerStroke">What a stroke delivers, in mL. A pump that counts none has strokes all the same: thirty a minute while it runs.</param>
/// <param name="Product">What it delivers.</param>
public sealed record DosedBy(int Index, double MillilitresPerStroke, ProductPlan Product)
{
    /// <summary>Strokes in a minute of running of a pump that only says that it runs: the habit of the trade's controllers, and well above what is called small anywhere here.</summary>
    public const double StrokesPerMinute = 30;
}

/// <summary>Water under closed-loop dosing of acid and chlorine whose pumps can be judged by what it does: a pool with pumps of its own, or all the water of a circuit that is dosed in its common return.</summary>
public sealed record DosedWater
{
    // Where the plant file is silent: total alkalinity in mg/L as CaCO3, and hours a turnover (both common practice). What a stroke really does is learned.
    private const double UsualAlkalinity = 100, UsualTurnover = 4;

    /// <summary>The pool; null for all the water of the circuit.</summary>
    public string? PoolId { get; init; }

    /// <summary>The acid pump.</summary>
    public required DosedBy Acid { get; init; }

    /// <summary>The chlorine pump.</summary>
    public required DosedBy Chlorine { get; init; }

    /// <summary>Index of the pH probe that answers acid.</summary>
    public int Ph { get; init; }

    /// <summary>Index of an ORP probe in that water, -1 where there is none.</summary>
    public int Orp { get; init; }

    /// <summary>Its volume in m3.</summary>
    public double VolumeCubicMetres { get; init; }

    /// <summary>Hours a turnover.</summary>
    public double TurnoverHours { get; init; }

    /// <summary>The pump of a product.</summary>
    public DosedBy Pump(DosedProduct product) => product == DosedProduct.Acid ? Acid : Chlorine;

    /// <summary>The water in figures, with its products as strong as they are on a day.</summary>
    /// <param name="today">The day.</param>
    /// <param name="alkalinity">Total alkalinity by the last test in mg/L as CaCO3; null when none is known.</param>
    public PumpedPool On(DateOnly today, double? alkalinity) => new(
        VolumeCubicMetres, alkalinity ?? UsualAlkalinity, TurnoverHours,
        new(Acid.MillilitresPerStroke, Strength.OfAcid(Acid.Product, today) ?? 0), new(Chlorine.MillilitresPerStroke, Strength.OfChlorine(Chlorine.Product, today) ?? 0));

    /// <summary>The waters of a circuit that can be supervised.</summary>
    public static ImmutableArray<DosedWater> Of(CircuitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var found = ImmutableArray.CreateBuilder<DosedWater>();
        foreach (var pool in plan.Pumps.Select(p => p.PoolId).Distinct())
            if (Find(plan, pool) is { } water) found.Add(water);
        return found.ToImmutable();
    }

    private static DosedWater? Find(CircuitPlan plan, string? pool)
    {
        if (Only(plan, pool, DosingAim.LowersPh) is not { } acid || Only(plan, pool, DosingAim.AddsChlorine) is not { } chlorine) return null;
        var (ph, volume) = (ProbeOf(plan, plan.Pumps[acid.Index], Measurand.Ph), Volume(plan, pool));
        return ph < 0 || volume <= 0 ? null : new()
        {
            PoolId = pool, Acid = acid, Chlorine = chlorine, Ph = ph, Orp = ProbeOf(plan, plan.Pumps[chlorine.Index], Measurand.Orp), VolumeCubicMetres = volume, TurnoverHours = plan.TurnoverHours ?? UsualTurnover,
        };
    }

    // Two pumps of one product share the work by a rule that nobody tells us.
    private static DosedBy? Only(CircuitPlan plan, string? pool, DosingAim aim)
    {
        var those = Enumerable.Range(0, plan.Pumps.Length).Where(i => plan.Pumps[i].PoolId == pool && DosingAims.Of(plan.Pumps[i].Doses) == aim).ToArray();
        return those is [var only] ? By(plan.Pumps[only], only) : null;
    }

    private static DosedBy? By(PumpPlan pump, int index) =>
        pump.Product is { } product && StrokeOf(pump) is { } stroke && IsDriveKnown(pump) && IsStrengthKnown(product) ? new(index, stroke, product) : null;

    /// <summary>What it is driven to is told minute by minute: by strokes, or by every start and stop.</summary>
    public static bool IsDriveKnown(PumpPlan pump)
    {
        ArgumentNullException.ThrowIfNull(pump);
        return pump.StrokesTopic is not null || pump.PulsesTold;
    }

    /// <summary>What a stroke of a pump delivers in mL; null when nobody said.</summary>
    public static double? StrokeOf(PumpPlan pump)
    {
        ArgumentNullException.ThrowIfNull(pump);
        return pump.StrokesTopic is not null ? pump.MillilitresPerStroke : pump.LitresPerHour * 1000 / 60 / DosedBy.StrokesPerMinute;
    }

    /// <summary>The plant file says how strong a product is, and it is a liquid whose effect can be worked out.</summary>
    public static bool IsStrengthKnown(ProductPlan product)
    {
        ArgumentNullException.ThrowIfNull(product);
        return (product.Assay ?? product.Strength) is > 0 && ProductAtHand.Of(product, DateOnly.MinValue) is { IsModelled: true, KilogramsPerLitre: > 0 };
    }

    // The one its controller follows; else one in its own water, else in the common return.
    private static int ProbeOf(CircuitPlan plan, PumpPlan pump, Measurand measurand)
    {
        if (PumpFollows.Of(plan, pump) is >= 0 and var followed && plan.Probes[followed].Measurand == measurand) return followed;
        var own = Array.FindIndex([.. plan.Probes], p => p.Measurand == measurand && p.PoolId == pump.PoolId);
        return own >= 0 ? own : Array.FindIndex([.. plan.Probes], p => p.Measurand == measurand && (p.PoolId is null || pump.PoolId is null));
    }

    private static double Volume(CircuitPlan plan, string? pool) => pool is not null && plan.Pools.Length > 1
        ? plan.Pools.Where(p => p.Id == pool).Sum(p => p.VolumeCubicMetres)
        : plan.Pools.Sum(p => p.VolumeCubicMetres) + (plan.BalanceTankCubicMetres ?? 0);

    /// <summary>How strong a dosed product is.</summary>
    internal static class Strength
    {
        /// <summary>Acid in eq/L; null where it is none.</summary>
        public static double? OfAcid(ProductPlan product, DateOnly today) =>
            ProductAtHand.Of(product, today) is var p && -p.PerKilogram.StrongCharge * p.KilogramsPerLitre is > 0 and var strength ? strength : null;

        /// <summary>Chlorine in g/L as Cl2, less what it lost in store; null where it is none.</summary>
        public static double? OfChlorine(ProductPlan product, DateOnly today) =>
            ProductAtHand.Of(product, today) is var p && 1000 * p.AvailableChlorine * p.KilogramsPerLitre is > 0 and var strength ? strength : null;
    }
}
