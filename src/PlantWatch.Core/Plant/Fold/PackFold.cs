using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Rows of the picked pack are confirmed and taken back one by one, by a person who may set limits.</summary>
internal static class PackFold
{
    public static Outcome Confirm(Draft draft, PackRowConfirmed said)
    {
        if (Objection(draft, said.PackId, said.RowId, said.By, out var row) is { } no) return no;
        if (string.IsNullOrWhiteSpace(said.Document)) return No(TurnedDownKind.Invalid, "document", Reason.Of("field.required"));
        if (said.Digest != RowDigest.Of(row)) return No(TurnedDownKind.Conflict, "digest", Reason.Of("pack.row_changed", said.RowId));
        if (!said.Applies && row.When.ToJudge is null) return No(TurnedDownKind.Invalid, "applies", Reason.Of("pack.row_decides_itself", said.RowId));
        if (LimitsMaker.Confirmation(draft.Plan.Pack!, row, draft.Confirmations) is { } known && known.Applies == said.Applies) return Outcome.AlreadyDone.Instance;
        var confirmation = new RowConfirmation(said.PackId, said.RowId, said.Digest, said.By.Trim(), said.At, said.Document.Trim()) { Applies = said.Applies };
        draft.Confirmations = draft.Confirmations.RemoveAll(c => IsOf(c, said.PackId, said.RowId)).Add(confirmation);
        Changed(draft, confirmation, RowChange.Confirmed, confirmation.By, null, said.At);
        return Outcome.Done.Instance;
    }

    public static Outcome Revoke(Draft draft, PackRowRevoked said)
    {
        if (Objection(draft, said.PackId, said.RowId, said.By, out _) is { } no) return no;
        if (string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("field.required"));
        if (draft.Confirmations.FirstOrDefault(c => IsOf(c, said.PackId, said.RowId)) is not { } known) return Outcome.AlreadyDone.Instance;
        draft.Confirmations = draft.Confirmations.Remove(known);
        Changed(draft, known, RowChange.Revoked, said.By.Trim(), said.Why.Trim(), said.At);
        return Outcome.Done.Instance;
    }

    private static void Changed(Draft draft, RowConfirmation confirmation, RowChange change, string by, string? why, Instant at)
    {
        draft.Write(at, at, confirmation.RowId, new PackRowEntry(confirmation, change, by, why));
        InForceFold.All(draft, at);
        if (change == RowChange.Confirmed) PoolFold.AgainstNewLimits(draft, at);
    }

    private static Outcome.TurnedDown? Objection(Draft draft, string packId, string rowId, string by, out PackRow row)
    {
        row = draft.Plan.Pack?.Rows.FirstOrDefault(r => r.Id == rowId)!;
        if (draft.Plan.Pack is not { } pack || pack.Id != packId) return No(TurnedDownKind.NotFound, "packId", Reason.Of("pack.not_picked", packId));
        if (row is null) return No(TurnedDownKind.NotFound, "rowId", Reason.Of("pack.row_unknown", rowId));
        if (string.IsNullOrWhiteSpace(by)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        return draft.Plan.People.IsEmpty || draft.Plan.People.Named(by) is { MaySetLimits: true } ? null : No(TurnedDownKind.Invalid, "by", Reason.Of("people.may_not_set_limits", by.Trim()));
    }

    private static bool IsOf(RowConfirmation confirmation, string packId, string rowId) => confirmation.PackId == packId && confirmation.RowId == rowId;

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
