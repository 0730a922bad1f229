using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Laboratory;

namespace PlantWatch.Core.Plant;

/// <summary>A person entered a laboratory's report.</summary>
/// <param name="At">When.</param>
/// <param name="Result">The report.</param>
/// <param name="Water">The chemistry at sampling, read by the shell.</param>
public sealed record LabResultEntered(Instant At, LabResult Result, ImmutableArray<WaterAtSampling> Water) : PlantEvent(At);

/// <summary>A person who may open a pool again closed a result that was outside its limit, and says why.</summary>
public sealed record LabResultClosed(Instant At, Guid ResultId, string By, string Why) : PlantEvent(At);

/// <summary>A report of a laboratory, with the chemistry at sampling beside it.</summary>
public sealed record LabResultEntry(LabResult Result, Instant ArrivedAt, ImmutableArray<WaterAtSampling> Water) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "laboratory";
}

/// <summary>A person closed a result that was outside its limit.</summary>
public sealed record LabClosedEntry(Guid ResultId, string By, string Why) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "laboratory_closed";
}
