using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A calibration from proposal to force. Nothing is applied without a person's decision.</summary>
internal static class CalibrationFold
{
    public static Outcome Propose(Draft draft, CalibrationProposed said)
    {
        var proposal = Tidy(said);
        if (draft.Calibrations.Find(proposal.Id) is { } known)
            return Same(known, proposal) ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        var index = draft.Index.Probe(proposal.ProbeId);
        if (index < 0) return No(TurnedDownKind.NotFound, "probeId", Reason.Of("probe.unknown", proposal.ProbeId));
        if (proposal.Sheet is not null) return BenchFold.Sign(draft, index, proposal, said.At);
        if (Objection(draft.Plan.Probes[index], proposal) is { } objection) return objection;
        // It says by how much to turn, not where to: of two that wait, from two phones, the panel would be turned twice.
        if (proposal.Kind == CalibrationKind.PanelAdjustment && draft.Calibrations.All.Any(c => c.ProbeId == proposal.ProbeId && IsWaitingForThePanel(c)))
            return No(TurnedDownKind.Conflict, "kind", Reason.Of("calibration.one_waits"));
        Keep(draft, proposal, said.At, said.At);
        return Outcome.Done.Instance;
    }

    public static Outcome Decide(Draft draft, CalibrationDecided said)
    {
        if (draft.Calibrations.Find(said.CalibrationId) is not { } proposal) return No(TurnedDownKind.NotFound, "id", Reason.Of("calibration.unknown"));
        if (proposal.Status == said.Decision) return Outcome.AlreadyDone.Instance;
        if (proposal.Status != CalibrationStatus.Proposed) return No(TurnedDownKind.Conflict, "decision", Reason.Of("calibration.already_decided"));
        var onPanel = proposal.Kind == CalibrationKind.PanelAdjustment;
        var fits = said.Decision is CalibrationStatus.Rejected
            || (said.Decision == CalibrationStatus.Adjusted && onPanel) || (said.Decision == CalibrationStatus.Approved && !onPanel);
        if (!fits) return No(TurnedDownKind.Invalid, "decision", Reason.Of(onPanel ? "calibration.adjust_on_panel" : "calibration.approve_here"));
        if (said.Decision == CalibrationStatus.Approved && ReviewFold.Objection(draft, proposal, said.By) is { } second) return second;
        var holdsFrom = said.HoldsFrom.IsSet ? said.HoldsFrom : proposal.HoldsFrom.IsSet ? proposal.HoldsFrom : said.At;
        if (holdsFrom > said.At + DeviceClock.AheadTolerance) return No(TurnedDownKind.Invalid, "holdsFrom", Reason.Of("calibration.not_in_future"));
        // What the record was corrected for must not be calibrated away a second time.
        if (said.Decision == CalibrationStatus.Approved && CorrectionOffers.IsCorrected(draft.Corrections, proposal.ProbeId, holdsFrom, said.At))
            return No(TurnedDownKind.Conflict, "holdsFrom", Reason.Of("correction.overlaps"));
        var decided = proposal with
        {
            Status = said.Decision,
            DecidedBy = said.By,
            DecidedAt = said.At,
            Decision = said.Why,
            HoldsFrom = said.Decision == CalibrationStatus.Rejected ? proposal.HoldsFrom : holdsFrom,
            Objected = proposal.Sheet is not null && said.Decision == CalibrationStatus.Rejected,
            ReviewedBy = proposal.Sheet is null ? null : said.By,
            ReviewedAt = proposal.Sheet is null ? Instant.Never : said.At,
        };
        Keep(draft, decided, said.At, decided.HoldsFrom.IsSet ? decided.HoldsFrom : said.At);
        if (decided.HoldsFrom.IsSet) Relearn(draft, draft.Index.Probe(proposal.ProbeId), said.At);
        return Outcome.Done.Instance;
    }

    // What the checks said is said again under the new calibration: the pairs keep what the probe read raw.
    internal static void Relearn(Draft draft, int index, Instant at)
    {
        if (index < 0) return;
        var plan = draft.Plan.Probes[index];
        var probe = draft.Probes[index];
        var last = probe.Last;
        if (last.Quality != Readings.Quality.NotReceived) last = last with { Value = draft.Calibrations.Correct(index, last.MeasuredAt, last.Raw) };
        // What changes the number changes its trend: it is told anew.
        draft.Probes[index] = probe with { Last = last, Trail = default, Trust = Reconciliation.Refold(probe.Trust, plan, draft.Calibrations.All, at) };
        StandingFold.Look(draft, index, at);
    }

    private static Outcome.TurnedDown? Objection(ProbePlan probe, Calibration proposal)
    {
        var forPanel = probe.Origin == SignalOrigin.PanelScaled;
        if (forPanel != (proposal.Kind == CalibrationKind.PanelAdjustment))
            return No(TurnedDownKind.Invalid, "kind", Reason.Of(forPanel ? "calibration.adjust_on_panel" : "calibration.approve_here"));
        if (proposal.Kind == CalibrationKind.Verification) return No(TurnedDownKind.Invalid, "kind", Reason.Of("calibration.needs_a_sheet"));
        if (proposal.Kind != CalibrationKind.TwoPoint && proposal.Slope != 1) return No(TurnedDownKind.Invalid, "slope", Reason.Of("calibration.slope_is_one"));
        // A glass electrode beyond half or double its slope is broken, not in need of calibration.
        if (!(proposal.Slope is > 0.5 and < 2)) return No(TurnedDownKind.Invalid, "slope", Reason.Of("calibration.slope_range", 0.5, 2));
        var span = probe.Range.High - probe.Range.Low;
        return double.IsFinite(proposal.Offset) && Math.Abs(proposal.Offset) <= span
            ? null
            : No(TurnedDownKind.Invalid, "offset", Reason.Of("calibration.offset_range", -span, span));
    }

    private static bool IsWaitingForThePanel(Calibration calibration) => calibration is { Kind: CalibrationKind.PanelAdjustment, Status: CalibrationStatus.Proposed };

    internal static Calibration Tidy(CalibrationProposed said) => said.Proposal with
    {
        Status = CalibrationStatus.Proposed,
        ProposedAt = said.At,
        DecidedBy = null,
        DecidedAt = Instant.Never,
        Decision = null,
        HoldsFrom = Instant.Never,
        ReviewedBy = null,
        ReviewedAt = Instant.Never,
        Review = null,
        Objected = false,
    };

    // What follows from a sheet is worked out here: only what was written on it is compared.
    private static bool Same(Calibration a, Calibration b) => b.Sheet is { } sheet
        ? a.Sheet is { } kept && kept.IsWrittenAs(sheet) && a.ProbeId == b.ProbeId && a.ProposedBy == b.ProposedBy && a.Note == b.Note && a.Work == b.Work
        : a.ProbeId == b.ProbeId && a.Sheet is null && a.Kind == b.Kind && a.Slope.Equals(b.Slope) && a.Offset.Equals(b.Offset) && a.ProposedBy == b.ProposedBy
        && a.Note == b.Note && a.Basis == b.Basis && a.Work == b.Work && a.Checks.AsSpan().SequenceEqual(b.Checks.AsSpan());

    internal static void Keep(Draft draft, Calibration calibration, Instant at, Instant happenedAt)
    {
        draft.Calibrations.Put(calibration);
        draft.Write(at, happenedAt, calibration.ProbeId, new CalibrationEntry(calibration));
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
