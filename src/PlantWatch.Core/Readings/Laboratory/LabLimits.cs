using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>Which limits hold for the laboratory's counts.</summary>
public static class LabLimits
{
    /// <summary>How a count stands against a limit.</summary>
    public static LabVerdict Of(this LabLimit limit, LabCount count)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return count.Against(limit.High);
    }

    /// <summary>The lowest limit on an organism: of the plant's own and of the confirmed rows of the pack; null when there is none.</summary>
    /// <param name="pool">The pool.</param>
    /// <param name="inForce">Its limits as they hold now.</param>
    /// <param name="organism">The organism.</param>
    public static LabLimit? Of(PoolPlan pool, LimitsInForce inForce, Organism organism)
    {
        ArgumentNullException.ThrowIfNull(pool);
        ArgumentNullException.ThrowIfNull(inForce);
        var rows = inForce.Bounds.Where(b => b.Quantity == organism.Limiting() && b.High is not null).Select(b => new LabLimit(organism, b.High!.Value, b.HighFrom));
        return pool.Laboratory.Limits.Where(l => l.Organism == organism).Concat(rows).MinBy(l => l.High);
    }
}
