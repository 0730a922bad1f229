using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- PUT /api/v1/notes/{id}  NoteRequest -> NoteView (200, also when sent again) or Problem (400/404/409)
//      GET /api/v1/notes?pool=&from=&to= : NoteView[] newest first: each in its newest version, those that touch the time

/// <summary>A note about a span of time as the page sends it. The id is in the address.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="From">When what it speaks of began.</param>
/// <param name="To">When that ended; the same for a moment.</param>
/// <param name="Text">What was seen or done.</param>
/// <param name="By">Who writes it.</param>
public sealed record NoteRequest(string? PoolId, Instant From, Instant To, string? Text, string? By)
{
    /// <summary>The note whose place it takes.</summary>
    public Guid? Corrects { get; init; }

    /// <summary>Why.</summary>
    public string? Why { get; init; }

    /// <summary>It is taken back: it stays in the record, and says so.</summary>
    public bool Retracted { get; init; }
}

/// <summary>A note in its newest version.</summary>
/// <param name="SaidAt">When this version came in.</param>
/// <param name="Why">Why it took the place of the one before; null for a first one.</param>
/// <param name="Retracted">It was taken back.</param>
/// <param name="Before">What it said before, newest first.</param>
public sealed record NoteView(Guid Id, string PoolId, Instant From, Instant To, string Text, string By, Instant SaidAt, string? Why, bool Retracted, IReadOnlyList<NoteVersion> Before);

/// <summary>What a note said before somebody corrected it.</summary>
public sealed record NoteVersion(Guid Id, Instant From, Instant To, string Text, string By, Instant SaidAt, string? Why, bool Retracted);
