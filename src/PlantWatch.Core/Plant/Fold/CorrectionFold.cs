using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Corrections of the record: made by a person, withdrawn by a person, each as a row of its own. No reading, trust or alarm is touched.</summary>
internal static class CorrectionFold
{
    // Twice the corrections of a service a week in ten years; beyond it something sends them by itself.
    private const int Most = 1000;

    public static Outcome Make(Draft draft, CorrectionMade said)
    {
        var made = said.Correction with { MadeAt = said.At, WithdrawnBy = null, WithdrawnAt = Instant.Never, WithdrawnWhy = null };
        if (draft.Corrections.FirstOrDefault(c => c.Id == made.Id) is { } known)
            return known with { MadeAt = said.At, WithdrawnBy = null, WithdrawnAt = Instant.Never, WithdrawnWhy = null } == made
                ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        var index = draft.Index.Probe(made.ProbeId);
        if (index < 0) return No(TurnedDownKind.NotFound, "probeId", Reason.Of("probe.unknown", made.ProbeId));
        if (Objection(draft, made, draft.Plan.Probes[index].Range, said.At) is { } objection) return objection;
        draft.Corrections = draft.Corrections.Add(made);
        draft.Write(said.At, made.From, made.ProbeId, new CorrectionEntry(made));
        return Outcome.Done.Instance;
    }

    public static Outcome Withdraw(Draft draft, CorrectionWithdrawn said)
    {
        if (draft.Corrections.FirstOrDefault(c => c.Id == said.CorrectionId) is not { } known) return No(TurnedDownKind.NotFound, "id", Reason.Of("correction.unknown"));
        if (!known.IsInForce) return Outcome.AlreadyDone.Instance;
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("field.required"));
        var withdrawn = known with { WithdrawnBy = said.By, WithdrawnAt = said.At, WithdrawnWhy = said.Why };
        draft.Corrections = draft.Corrections.Replace(known, withdrawn);
        draft.Write(said.At, known.From, known.ProbeId, new CorrectionEntry(withdrawn));
        return Outcome.Done.Instance;
    }

    private static Outcome.TurnedDown? Objection(Draft draft, RecordCorrection made, ValueRange range, Instant now)
    {
        if (string.IsNullOrWhiteSpace(made.MadeBy)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(made.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("field.required"));
        if (!made.From.IsSet || made.To <= made.From) return No(TurnedDownKind.Invalid, "to", Reason.Of("correction.ends_before_it_begins"));
        // What is to come has not been serviced yet.
        if (made.To > now + DeviceClock.AheadTolerance) return No(TurnedDownKind.Invalid, "to", Reason.Of("calibration.not_in_future"));
        var span = range.High - range.Low;
        if (!(made.GapU > 0 && made.GapU <= span)) return No(TurnedDownKind.Invalid, "gapU", Reason.Of("correction.needs_uncertainty"));
        if (!IsWithin(made.Fouling, span)) return No(TurnedDownKind.Invalid, "fouling", Reason.Of("correction.gap_range", -span, span));
        if (!IsWithin(made.Drift, span) || !double.IsFinite(made.Pivot)) return No(TurnedDownKind.Invalid, "drift", Reason.Of("correction.gap_range", -span, span));
        // Far from all the probe can read, a slope would make any gap of any reading.
        if (made.DriftSlope != 0 && !range.Contains(made.Pivot)) return No(TurnedDownKind.Invalid, "pivot", Reason.Of("correction.pivot_range", range.Low, range.High));
        // An electrode beyond half or double its slope was broken, not drifting.
        if (!(made.DriftSlope is > -0.5 and < 1)) return No(TurnedDownKind.Invalid, "driftSlope", Reason.Of("correction.slope_range", -0.5, 1));
        if (!(made.WanderPerDay >= 0 && double.IsFinite(made.WanderPerDay))) return No(TurnedDownKind.Invalid, "wander", Reason.Of("correction.needs_uncertainty"));
        if (draft.Corrections.Length >= Most) return No(TurnedDownKind.Conflict, "id", Reason.Of("correction.too_many", Most));
        return CorrectionOffers.IsCorrected(draft.Corrections, made.ProbeId, made.From, made.To)
            ? No(TurnedDownKind.Conflict, "from", Reason.Of("correction.overlaps")) : null;
    }

    private static bool IsWithin(double value, double span) => double.IsFinite(value) && Math.Abs(value) <= span;

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
