using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Notes;

/// <summary>What a person wrote about a pool over a span of time. It is never changed: a correction is another one that names it.</summary>
/// <param name="Id">UUIDv7 made where it was written.</param>
/// <param name="PoolId">The pool.</param>
/// <param name="From">When what it speaks of began.</param>
/// <param name="To">When that ended; the same for a moment.</param>
/// <param name="Text">What was seen or done.</param>
/// <param name="By">Who wrote it.</param>
public sealed record SpanNote(Guid Id, string PoolId, Instant From, Instant To, string Text, string By)
{
    /// <summary>When the circuit took it; never before.</summary>
    public Instant SaidAt { get; init; }

    /// <summary>The note whose place it takes; null for a first one.</summary>
    public Guid? Corrects { get; init; }

    /// <summary>Why it takes that place; null for a first one.</summary>
    public string? Why { get; init; }

    /// <summary>It is taken back: it stays in the record, and says so.</summary>
    public bool Retracted { get; init; }

    /// <summary>True where both were written as one: when they came in is not said by whoever wrote them.</summary>
    public bool SaysWhat(SpanNote other) => other is not null && this with { SaidAt = other.SaidAt } == other;
}
