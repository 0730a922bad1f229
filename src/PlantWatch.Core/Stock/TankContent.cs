using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Stock;

/// <summary>How much is in a tank.</summary>
public static class TankContent
{
    /// <summary>True where the use of a pump is known by the level in its tank.</summary>
    public static bool HasLevel(PumpPlan plan) => plan is { TankTopic: not null, TankLitres: > 0 };

    /// <summary>Litres that a tank holds, by its level or by the book; null when neither is known.</summary>
    public static double? Litres(PumpPlan plan, TankState tank)
    {
        ArgumentNullException.ThrowIfNull(tank);
        if (!HasLevel(plan)) return tank.Book;
        return tank.Trail.IsKnown ? tank.Trail.Level / 100 * plan.TankLitres : null;
    }

    /// <summary>Litres of it that the pump can draw: what stands over the foot valve.</summary>
    public static double? Usable(PumpPlan plan, TankState tank)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Litres(plan, tank) is { } litres ? Math.Max(0, litres - (plan.TankFootPercent / 100 * (plan.TankLitres ?? 0))) : null;
    }
}
