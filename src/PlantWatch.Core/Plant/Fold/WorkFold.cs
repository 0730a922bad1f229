using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Work on a probe: from its beginning to its end, half an hour at most, its readings are a function check. Alarms that stand go on standing, and nothing else is suppressed.</summary>
internal static class WorkFold
{
    public static Outcome Begin(Draft draft, ProbeWorkBegun said)
    {
        var index = draft.Index.Probe(said.ProbeId);
        if (index < 0) return No(TurnedDownKind.NotFound, "probeId", Reason.Of("probe.unknown", said.ProbeId));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        var known = draft.Probes[index].Work;
        if (known.Id == said.WorkId) return Outcome.AlreadyDone.Instance;
        // Who begins again, from another device or after losing the page, goes on; somebody else waits.
        var own = PersonNames.AreSame(known.By, said.By);
        if (!own && known.Holds(said.At) && !known.Ended) return No(TurnedDownKind.Conflict, "probeId", Reason.Of("work.under_way", known.By ?? "", (known.Until - said.At).TotalMinutes));
        Finish(draft, index, WorkChange.Ended, said.By, said.At);
        var unwatched = draft.Probes[index].Work.UnwatchedBy(said.At);
        Keep(draft, index, new WorkWindow(said.WorkId, said.By.Trim(), said.At, said.At + WorkWindow.Longest, Ended: false, unwatched), WorkChange.Begun, said.By, said.At);
        return Outcome.Done.Instance;
    }

    public static Outcome End(Draft draft, ProbeWorkEnded said)
    {
        var index = draft.Index.Probe(said.ProbeId);
        if (index < 0) return No(TurnedDownKind.NotFound, "probeId", Reason.Of("probe.unknown", said.ProbeId));
        if (draft.Probes[index].Work.Id != said.WorkId) return No(TurnedDownKind.NotFound, "id", Reason.Of("work.unknown"));
        return Finish(draft, index, WorkChange.Ended, said.By, said.At) ? Outcome.Done.Instance : Outcome.AlreadyDone.Instance;
    }

    /// <summary>Ends what is open at a time, said by a person; false when nothing is.</summary>
    public static bool Finish(Draft draft, int index, WorkChange change, string by, Instant at)
    {
        Close(draft, index, at);
        if (draft.Probes[index].Work is not { IsOpen: true } open) return false;
        Keep(draft, index, open with { Until = Instant.Earlier(Instant.Later(at, open.Since), open.Until), Ended = true }, change, by, at);
        return true;
    }

    /// <summary>Writes down the end of a time that has run out.</summary>
    public static void Close(Draft draft, int index, Instant now)
    {
        if (draft.Probes[index].Work is { IsOpen: true } open && now >= open.Until)
            Keep(draft, index, open with { Ended = true }, WorkChange.RanOut, null, now);
    }

    private static void Keep(Draft draft, int index, WorkWindow window, WorkChange change, string? by, Instant at)
    {
        var probe = draft.Probes[index];
        draft.Probes[index] = probe with { Work = window };
        draft.Write(at, change == WorkChange.Begun ? window.Since : window.Until, probe.Id, new WorkEntry(probe.Id, window, change, by?.Trim()));
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
