using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>What happened to a line. The default is not stated.</summary>
public enum ExceptionChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A breach began.</summary>
    Opened,
    /// <summary>Something was done or seen.</summary>
    Acted,
    /// <summary>It was tested again.</summary>
    Retested,
    /// <summary>Something it rests on was corrected.</summary>
    Corrected,
    /// <summary>It stands open again.</summary>
    Reopened,
    /// <summary>It was closed.</summary>
    Closed,
}

/// <summary>A person says in words what was done about a breach: only what no dose, test, wash or closed pool can tell.</summary>
/// <param name="At">When it came in.</param>
/// <param name="NoteId">Id of this note, UUIDv7.</param>
/// <param name="LineId">The line.</param>
/// <param name="By">Who.</param>
/// <param name="Text">What was done.</param>
/// <param name="DoneAt">When it was done; never means now.</param>
public sealed record ExceptionNoted(Instant At, Guid NoteId, Guid LineId, string By, string Text, Instant DoneAt = default) : PlantEvent(At);

/// <summary>A line of the exceptions after a change.</summary>
/// <param name="Line">The line.</param>
/// <param name="Change">What happened to it.</param>
public sealed record ExceptionEntry(ExceptionLine Line, ExceptionChange Change) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "exception";
}

/// <summary>A line of the exceptions as it was closed, from reading to closing. It stands in the record at the time of its reading.</summary>
public sealed record ExceptionClosedEntry(ExceptionLine Line) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "exception_closed";
}
