using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A backwash, from its beginning to its end, half an hour at most. What it does by design to flow, pressure and sample cells calls nobody meanwhile; what still stands after it does.</summary>
internal static class BackwashFold
{
    public static Outcome Begin(Draft draft, BackwashBegun said)
    {
        if (Objection(draft, said.FilterId, said.By, out var index) is { } no) return no;
        if (draft.Plan.Filters[index].Kind == FilterKind.Strainer) return No(TurnedDownKind.Invalid, "filterId", Reason.Of("backwash.of_strainer", draft.Plan.Filters[index].Name));
        var known = draft.Filters[index].Backwash;
        if (known.Id == said.Id) return Outcome.AlreadyDone.Instance;
        if (known.Holds(said.At) && known.IsOpen) return No(TurnedDownKind.Conflict, "filterId", Reason.Of("backwash.under_way", known.By ?? "", (known.Until - said.At).TotalMinutes));
        var why = string.IsNullOrWhiteSpace(said.Why) ? null : said.Why.Trim();
        var window = new BackwashWindow(said.Id, said.By.Trim(), said.At, said.At + BackwashWindow.Longest, Ended: false) { Allowance = BackwashQuiet.Left(draft.Filters[index], said.At) };
        Keep(draft, index, window, BackwashChange.Begun, said.By, said.At, why);
        return Outcome.Done.Instance;
    }

    public static Outcome End(Draft draft, BackwashEnded said)
    {
        if (Objection(draft, said.FilterId, said.By, out var index) is { } no) return no;
        if (draft.Filters[index].Backwash.Id != said.Id) return No(TurnedDownKind.NotFound, "id", Reason.Of("backwash.unknown"));
        return Finish(draft, index, BackwashChange.GivenUp, said.By, said.At) ? Outcome.Done.Instance : Outcome.AlreadyDone.Instance;
    }

    /// <summary>Ends what is open at a time, said by a person; false when nothing is.</summary>
    public static bool Finish(Draft draft, int index, BackwashChange change, string by, Instant at)
    {
        Close(draft, index, at);
        if (draft.Filters[index].Backwash is not { IsOpen: true } open) return false;
        var over = Instant.Earlier(Instant.Later(at, open.Since), open.Until);
        Keep(draft, index, open with { Until = change == BackwashChange.Washed ? over + BackwashWindow.Settles : over, Ended = true }, change, by, at);
        return true;
    }

    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Filters.Length; i++) Close(draft, i, now);
    }

    /// <summary>True while any filter of the circuit is backwashed: its water goes to waste, and what the others see is not their work either.</summary>
    public static bool Holds(Draft draft, Instant at)
    {
        foreach (var filter in draft.Filters)
            if (filter.Backwash.Holds(at)) return true;
        return false;
    }

    /// <summary>True while what any of them does is silenced: its quiet is not used up.</summary>
    public static bool Silences(Draft draft, Instant at)
    {
        foreach (var filter in draft.Filters)
            if (filter.Backwash.Silences(at)) return true;
        return false;
    }

    /// <summary>True while any of them is under way: its end is judged as ever.</summary>
    public static bool IsUnderWay(Draft draft, Instant at)
    {
        foreach (var filter in draft.Filters)
            if (filter.Backwash.IsUnderWay(at)) return true;
        return false;
    }

    private static void Close(Draft draft, int index, Instant now)
    {
        if (draft.Filters[index].Backwash is { IsOpen: true } open && now >= open.Until)
            Keep(draft, index, open with { Ended = true }, BackwashChange.RanOut, null, now);
    }

    private static void Keep(Draft draft, int index, BackwashWindow window, BackwashChange change, string? by, Instant at, string? why = null)
    {
        var filter = draft.Filters[index];
        draft.Filters = draft.Filters.SetItem(index, filter with { Backwash = window, Quiet = window.Ended ? BackwashQuiet.With(filter, window) : filter.Quiet });
        draft.Write(at, change == BackwashChange.Begun ? window.Since : Instant.Earlier(at, window.Until), filter.Id, new BackwashEntry(filter.Id, window, change, by?.Trim()) { Why = why });
        draft.Alarms.Regard(at);
    }

    private static Outcome.TurnedDown? Objection(Draft draft, string filter, string by, out int index)
    {
        index = FilterFold.IndexOf(draft, filter);
        if (index < 0) return No(TurnedDownKind.NotFound, "filterId", Reason.Of("filter.unknown", filter));
        return string.IsNullOrWhiteSpace(by) ? No(TurnedDownKind.Invalid, "by", Reason.Of("field.required")) : null;
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
