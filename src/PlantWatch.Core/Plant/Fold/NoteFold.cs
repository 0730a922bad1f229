using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Notes about a span of time: into the record, and nothing is judged by them.</summary>
internal static class NoteFold
{
    // Older ones are found by their id in the record; the shell looks there before it sends (our choice: a month of four a day, because what is sent again or corrected is of these days).
    private const int Remembered = 128;

    public static Outcome Write(Draft draft, NoteWritten said)
    {
        var note = said.Note with { By = said.Note.By?.Trim() ?? "", Text = said.Note.Text?.Trim() ?? "", SaidAt = said.At };
        foreach (var known in draft.Notes)
            if (known.Id == note.Id) return known.SaysWhat(note) ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (draft.Index.Pool(note.PoolId) < 0) return No(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", note.PoolId));
        if (NoteChecks.Of(note, said.At) is var (field, why)) return No(TurnedDownKind.Invalid, field, why);
        if (Correction(draft, note) is { } no) return no;
        draft.Notes = draft.Notes.Length < Remembered ? draft.Notes.Add(note) : draft.Notes.RemoveAt(0).Add(note);
        draft.Entries.Add(new RecordEntry(note.Id, said.At, note.From, note.PoolId, new NoteEntry(note)));
        return Outcome.Done.Instance;
    }

    private static Outcome.TurnedDown? Correction(Draft draft, SpanNote note)
    {
        if (note.Corrects is not { } wrong) return null;
        // Two people who correct one note each would have two that count.
        if (draft.Notes.Any(n => n.Corrects == wrong)) return No(TurnedDownKind.Conflict, "corrects", Reason.Of("note.corrected_already"));
        return draft.Notes.Any(n => n.Id == wrong && n.PoolId != note.PoolId) ? No(TurnedDownKind.Invalid, "corrects", Reason.Of("note.of_another_pool")) : null;
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
