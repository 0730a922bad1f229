using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The handover between two shifts: who leaves writes, who comes in signs what stands. It changes nothing of the plant.</summary>
internal static class HandoverFold
{
    public static Outcome Write(Draft draft, HandoverWritten said)
    {
        var known = draft.Handover;
        if (said.Id == known.SignedId) return Outcome.AlreadyDone.Instance;
        if (said.Id == known.Id) return known.From == said.By.Trim() && known.Note == said.Note.Trim() ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(said.Note)) return No(TurnedDownKind.Invalid, "note", Reason.Of("field.required"));
        if (known.Waits) Enter(draft, said.At, new(known.Id, HandoverChange.LeftUnsigned, known.From, null, known.Note, null, known.WrittenAt));
        draft.Handover = known with { Id = said.Id, From = said.By.Trim(), Note = said.Note.Trim(), WrittenAt = said.At };
        Enter(draft, said.At, new(said.Id, HandoverChange.Written, said.By.Trim(), null, said.Note.Trim(), null, said.At));
        return Outcome.Done.Instance;
    }

    public static Outcome Sign(Draft draft, HandoverSigned said)
    {
        var known = draft.Handover;
        // Who signs second is not told that it is signed by them.
        if (said.Id == known.SignedId) return known.SignedBy == said.By.Trim() || PersonNames.AreSame(known.SignedBy, said.By) ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (known.Waits && said.Id != known.Id) return No(TurnedDownKind.Conflict, "id", Reason.Of("handover.another_waits", known.From!));
        // A signature is a second pair of eyes. Another spelling is asked for at the door: see HandoverObjection.
        if (known.Waits && string.Equals(known.From, said.By.Trim(), StringComparison.OrdinalIgnoreCase)) return No(TurnedDownKind.Conflict, "by", Reason.Of("handover.same_person"));
        var sheet = HandoverSheet.Of(draft.Seal(), said.At);
        if (sheet.Hash() != said.Shown) return No(TurnedDownKind.Conflict, "shown", Reason.Of("handover.changed"));
        draft.Handover = new(Guid.Empty, null, null, Instant.Never, said.Id, said.By.Trim(), said.At);
        var remark = string.IsNullOrWhiteSpace(said.Remark) ? null : said.Remark.Trim();
        Enter(draft, said.At, new(said.Id, HandoverChange.TakenOver, known.From, said.By.Trim(), known.Note, remark, known.WrittenAt) { Sheet = sheet, Shown = said.Shown });
        return Outcome.Done.Instance;
    }

    private static void Enter(Draft draft, Instant at, HandoverEntry entry) => draft.Write(at, at, draft.Plan.Id, entry);

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason why) => Outcome.TurnedDown.Because(kind, field, why);
}
