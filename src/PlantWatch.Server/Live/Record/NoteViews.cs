using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>Notes about spans of time, each with what it said before.</summary>
internal static class NoteViews
{
    /// <summary>The notes that no other one took the place of, newest first.</summary>
    public static IReadOnlyList<NoteView> Newest(IEnumerable<SpanNote> rows)
    {
        var all = rows.ToDictionary(n => n.Id);
        var replaced = all.Values.Select(n => n.Corrects).OfType<Guid>().ToHashSet();
        return [.. all.Values.Where(n => !replaced.Contains(n.Id)).OrderByDescending(n => n.From).ThenByDescending(n => n.SaidAt).Select(n => Of(n, all))];
    }

    /// <summary>One note with what it said before.</summary>
    public static NoteView Of(SpanNote note, IReadOnlyDictionary<Guid, SpanNote> all)
    {
        var before = new List<NoteVersion>();
        // No longer than there are notes: a ring cannot be written, and if it were it would not hang the page.
        for (var at = Earlier(note, all); at is not null && before.Count < all.Count; at = Earlier(at, all))
            before.Add(new(at.Id, at.From, at.To, at.Text, at.By, at.SaidAt, at.Why, at.Retracted));
        return new(note.Id, note.PoolId, note.From, note.To, note.Text, note.By, note.SaidAt, note.Why, note.Retracted, before);
    }

    /// <summary>True when the note speaks of some of the time; an end that is never is open.</summary>
    public static bool Touches(NoteView note, Instant from, Instant to) => (!from.IsSet || note.To >= from) && (!to.IsSet || note.From < to);

    private static SpanNote? Earlier(SpanNote note, IReadOnlyDictionary<Guid, SpanNote> all) => note.Corrects is { } id && all.TryGetValue(id, out var earlier) ? earlier : null;
}
