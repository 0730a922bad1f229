using PlantWatch.Core.Dosing;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Fault notes by maintenance. Each version is a row of the record; the state keeps the ones that are not done.</summary>
internal static class FaultFold
{
    public static Outcome Note(Draft draft, FaultNoted said)
    {
        var note = said.Note with { At = said.At };
        if (draft.Index.Pump(note.Asset) < 0 && draft.Index.Probe(note.Asset) < 0)
            return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "asset", Reason.Of("asset.unknown", note.Asset));
        if (string.IsNullOrWhiteSpace(note.Seen)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "seen", Reason.Of("field.required"));
        if (note.State == FaultState.Done && string.IsNullOrWhiteSpace(note.Done))
            return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "done", Reason.Of("fault.say_what_was_done"));
        if (draft.Faults.TryGetValue(note.Id, out var known) && known with { At = note.At } == note) return Outcome.AlreadyDone.Instance;
        draft.Faults = note.State == FaultState.Done ? draft.Faults.Remove(note.Id) : draft.Faults.SetItem(note.Id, note);
        draft.Write(said.At, said.At, note.Asset, new FaultEntry(note));
        return Outcome.Done.Instance;
    }
}
