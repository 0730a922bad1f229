using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>The highest count of an organism that is accepted, per mL for colonies and per 100 mL for the others.</summary>
/// <param name="Organism">Which.</param>
/// <param name="High">The highest count; 0 means none may be found.</param>
/// <param name="Source">Document and clause.</param>
public sealed record LabLimit(Organism Organism, double High, string Source)
{
    /// <summary>How a count stands against it.</summary>
    public LabVerdict Of(LabCount count) => count.Against(High);
}

/// <summary>What the plant has sampled for the laboratory.</summary>
public sealed record LabPlan
{
    /// <summary>Nothing is planned.</summary>
    public static LabPlan None { get; } = new();

    /// <summary>Limits of the plant's own; beside those of a confirmed pack the lower one counts.</summary>
    public ImmutableArray<LabLimit> Limits { get; init; } = [];

    /// <summary>A sample is due so long after the last; null when none is planned.</summary>
    public TimeSpan? Every { get; init; }

    /// <summary>After a result outside its limit a resample is due within this. Default 3 days: a proposal of this project, local code comes first.</summary>
    public TimeSpan ResampleWithin { get; init; } = TimeSpan.FromDays(3);

    /// <inheritdoc/>
    public bool Equals(LabPlan? other) => other is not null && Limits.AsSpan().SequenceEqual(other.Limits.AsSpan()) && Every == other.Every && ResampleWithin == other.ResampleWithin;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Limits.Length, Every, ResampleWithin);
}

/// <summary>Which limits hold for the laboratory's counts.</summary>
public static class LabLimits
{
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
