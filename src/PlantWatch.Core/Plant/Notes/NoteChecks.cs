using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Notes;

/// <summary>What is impossible about a note, by field; null when nothing is.</summary>
public static class NoteChecks
{
    /// <summary>The longest time that one note may speak of: a season and more.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(366);

    // As far as the strips reach, and a little.
    private static readonly TimeSpan Oldest = TimeSpan.FromDays((5 * 366) + 31);

    /// <summary>Looks at a note.</summary>
    /// <param name="note">The note.</param>
    /// <param name="now">When it came in.</param>
    public static (string Field, Reason Why)? Of(SpanNote note, Instant now)
    {
        ArgumentNullException.ThrowIfNull(note);
        if (note.By.Length == 0) return ("by", Reason.Of("field.required"));
        if (note.Text.Length == 0) return ("text", Reason.Of("field.required"));
        return OfTime(note, now) ?? OfCorrection(note);
    }

    private static (string, Reason)? OfTime(SpanNote note, Instant now)
    {
        if (note.To < note.From) return ("to", Reason.Of("note.ends_before_it_begins"));
        // What is to come is planned work, not something seen.
        if (note.To - now > ImpossibleChecks.ClockTolerance) return ("to", Reason.Of("note.to_come"));
        if (now - note.From > Oldest) return ("from", Reason.Of("note.too_old"));
        return note.To - note.From > Longest ? ("to", Reason.Of("note.too_long")) : null;
    }

    private static (string, Reason)? OfCorrection(SpanNote note)
    {
        if (note.Corrects is null) return note.Retracted ? ("corrects", Reason.Of("field.required")) : null;
        if (note.Corrects == note.Id) return ("corrects", Reason.Of("note.corrects_unknown"));
        return string.IsNullOrWhiteSpace(note.Why) ? ("why", Reason.Of("field.required")) : null;
    }
}
