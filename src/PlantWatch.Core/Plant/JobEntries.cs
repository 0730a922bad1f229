using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Maintenance;

namespace PlantWatch.Core.Plant;

/// <summary>A version of a job. Stored as a fault with its note: by these names rows lie in records from before jobs had parts.</summary>
public sealed record JobEntry([property: JsonPropertyName("note")] Job Job) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "fault";
}

/// <summary>What the plant's signals say of a job that was done.</summary>
/// <param name="JobId">The job.</param>
/// <param name="Asset">What it was done on.</param>
/// <param name="Effect">Whether it helped.</param>
/// <param name="Signs">Keys of the alarms it was judged by.</param>
public sealed record JobEffectEntry(Guid JobId, string Asset, JobEffect Effect, ImmutableArray<string> Signs) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "job_effect";
}
