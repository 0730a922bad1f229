using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>A report of a laboratory on one sample of a pool's water. A resample is simply a newer one, and a correction one that names the old.</summary>
public sealed record LabResult
{
    /// <summary>UUIDv7 made where it was entered, so that sending it twice is harmless.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pool.</summary>
    public required string PoolId { get; init; }

    /// <summary>Where the sample was taken.</summary>
    public SamplePoint Point { get; init; }

    /// <summary>The place in words, such as the deep end or the spa's jets; null when nothing was said.</summary>
    public string? Place { get; init; }

    /// <summary>When the sample was taken.</summary>
    public required Instant SampledAt { get; init; }

    /// <summary>When the laboratory reported.</summary>
    public required Instant ReportedAt { get; init; }

    /// <summary>Which laboratory.</summary>
    public required string Laboratory { get; init; }

    /// <summary>Its number of the sample.</summary>
    public required string SampleNumber { get; init; }

    /// <summary>Who entered it.</summary>
    public required string By { get; init; }

    /// <summary>The counts, one an organism.</summary>
    public required ImmutableArray<LabCount> Counts { get; init; }

    /// <summary>A remark; null when there is none.</summary>
    public string? Note { get; init; }

    /// <summary>The result that this one takes the place of; null for a new one.</summary>
    public Guid? Corrects { get; init; }
}

/// <summary>What the chemistry was when the sample was taken: a test by hand, or a probe that was believed.</summary>
/// <param name="Measurand">What.</param>
/// <param name="Value">Its value, in the measurand's own unit.</param>
/// <param name="At">When it was tested; for a probe the sample time.</param>
/// <param name="ProbeId">The probe; null for a test by hand.</param>
public readonly record struct WaterAtSampling(Measurand Measurand, double Value, Instant At, string? ProbeId);
