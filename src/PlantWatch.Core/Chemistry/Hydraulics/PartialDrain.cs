using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>A matter that only fresh water lowers.</summary>
/// <param name="What">Cyanuric acid, dissolved solids or calcium hardness.</param>
/// <param name="Now">Level now, mg/L.</param>
/// <param name="Target">Level wanted, mg/L.</param>
/// <param name="Fill">Level of the fill water, mg/L.</param>
public readonly record struct DrainWish(Measurand What, double Now, double Target, double Fill);

/// <summary>A drain that brings every level to its target or below.</summary>
/// <param name="Part">The part of the water to replace, 0 to 1.</param>
/// <param name="CubicMetres">The same in m3.</param>
/// <param name="Governs">The matter that asks for the most.</param>
/// <param name="Overflow">Pool volumes that an overflow would take instead; null when it never gets there.</param>
/// <param name="Steps">How many drains of at most <see cref="PartialDrain.MostAtOnce"/> do the same.</param>
/// <param name="CubicMetresEach">Water of each of those, m3.</param>
/// <param name="Says">What has to be said beside it.</param>
public sealed record DrainPlan(double Part, double CubicMetres, Measurand Governs, double? Overflow, int Steps, double CubicMetresEach, ImmutableArray<Reason> Says);

/// <summary>How much of the water to replace so that cyanuric acid, dissolved solids and hardness come down to their targets.</summary>
public static class PartialDrain
{
    /// <summary>The most drained at one time (common practice): ground water can lift or crack a shell that stands empty.</summary>
    public const double MostAtOnce = 1.0 / 3;

    /// <summary>The plan; null with the reasons when fill water cannot reach a target, or an input is out of range. No drain at all when every level is at its target or below.</summary>
    /// <param name="cubicMetres">Volume of the water in m3.</param>
    /// <param name="wishes">The levels; one that is at its target or below asks for nothing.</param>
    /// <param name="why">Why there is no plan.</param>
    public static DrainPlan? Of(double cubicMetres, IReadOnlyList<DrainWish> wishes, out ImmutableArray<Reason> why)
    {
        ArgumentNullException.ThrowIfNull(wishes);
        why = [];
        if (new InputCheck().Within("volume", cubicMetres, Turnover.ValidCubicMetres, "m3").Why is { } outside) { why = [outside]; return null; }
        var against = ImmutableArray.CreateBuilder<Reason>();
        DrainWish? most = null;
        var part = 0.0;
        foreach (var wish in wishes)
        {
            // Not a number is not at its target either: it goes on to be named.
            if (wish.Now <= wish.Target) continue;
            var asks = WaterReplacement.BatchPart(wish.Now, wish.Target, wish.Fill);
            if (!asks.IsKnown) against.Add(asks.Why!);
            else if (most is null || asks.Value > part) (part, most) = (asks.Value, wish);
        }

        if (against.Count > 0) { why = against.ToImmutable(); return null; }
        return most is { } governs ? Plan(cubicMetres, part, governs) : new(0, 0, Measurand.None, 0, 0, 0, []);
    }

    private static DrainPlan Plan(double cubicMetres, double part, DrainWish governs)
    {
        var overflow = WaterReplacement.OverflowVolumes(governs.Now, governs.Target, governs.Fill).OrNull;
        var steps = part <= MostAtOnce ? 1 : (int)(WaterReplacement.Batches(governs.Now, governs.Target, governs.Fill, MostAtOnce).OrNull ?? 0);
        // Equal steps that together leave what one large drain would leave.
        var each = steps > 0 ? cubicMetres * (1 - Math.Pow(1 - part, 1.0 / steps)) : 0;
        var says = ImmutableArray.CreateBuilder<Reason>();
        says.Add(Reason.Of("drain.caution"));
        if (steps == 0) says.Add(Reason.Of("drain.empties_the_pool"));
        if (steps > 1) says.Add(Reason.Of("drain.in_steps", steps, each));
        says.Add(Reason.Of("drain.retest_all"));
        return new(part, part * cubicMetres, governs.What, overflow, steps, each, says.ToImmutable());
    }
}
