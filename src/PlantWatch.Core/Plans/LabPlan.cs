using System.Collections.Immutable;

namespace PlantWatch.Core.Plans;

/// <summary>The highest count of an organism that is accepted, per mL for colonies and per 100 mL for the others.</summary>
/// <param name="Organism">Which.</param>
/// <param name="High">The highest count; 0 means none may be found.</param>
/// <param name="Source">Document and clause.</param>
public sealed record LabLimit(Organism Organism, double High, string Source);

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
