using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant;

/// <summary>A person washed a filter.</summary>
/// <param name="At">When.</param>
/// <param name="Id">Id of this wash, UUIDv7.</param>
/// <param name="FilterId">The filter.</param>
/// <param name="By">Who.</param>
public sealed record FilterWashed(Instant At, Guid Id, string FilterId, string By) : PlantEvent(At);

/// <summary>A filter was washed.</summary>
/// <param name="WashId">Id of the wash.</param>
/// <param name="FilterId">The filter.</param>
/// <param name="By">Who washed it.</param>
public sealed record FilterEntry(Guid WashId, string FilterId, string By) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "filter_washed";
}
