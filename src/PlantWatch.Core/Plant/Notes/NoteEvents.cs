using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Notes;

/// <summary>A person wrote a note about a span of time, or corrects or takes back one that the shell has seen in the record.</summary>
/// <param name="At">When.</param>
/// <param name="Note">The note.</param>
public sealed record NoteWritten(Instant At, SpanNote Note) : PlantEvent(At);

/// <summary>A note about a span of time.</summary>
public sealed record NoteEntry(SpanNote Note) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "note";
}
