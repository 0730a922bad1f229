using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The second look at a calibration, by somebody else than who did it. Taking it back is open to everybody: a doubt needs no second person.</summary>
internal static class ReviewFold
{
    public static Outcome Review(Draft draft, CalibrationReviewed said)
    {
        if (draft.Calibrations.Find(said.CalibrationId) is not { } done) return No(TurnedDownKind.NotFound, "id", Reason.Of("calibration.unknown"));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (Repeats(done, said)) return Outcome.AlreadyDone.Instance;
        if (done.ReviewedBy is { } earlier) return No(TurnedDownKind.Conflict, "id", Reason.Of("review.already_done", earlier));
        if (!done.WaitsForReview) return No(TurnedDownKind.Conflict, "id", Reason.Of("review.nothing_to_review"));
        if (said.Accepted && Objection(draft, done, said.By) is { } second) return second;
        if (!said.Accepted && string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("review.says_why"));
        var reviewed = done with
        {
            ReviewedBy = said.By.Trim(), ReviewedAt = said.At, Review = said.Why, Objected = !said.Accepted,
            // What was turned on the panel was turned: a log of it cannot be taken back, only objected to.
            Status = said.Accepted || done.Status == CalibrationStatus.Adjusted ? done.Status : CalibrationStatus.Rejected,
        };
        CalibrationFold.Keep(draft, reviewed, said.At, done.HoldsFrom);
        if (reviewed.Status != done.Status) CalibrationFold.Relearn(draft, draft.Index.Probe(done.ProbeId), said.At);
        return Outcome.Done.Instance;
    }

    /// <summary>Why a person cannot approve or review: the plant asks for a second one, and this is the first. Another spelling of the first is asked for at the door: see <see cref="SecondPerson"/>.</summary>
    public static Outcome.TurnedDown? Objection(Draft draft, Calibration calibration, string by)
    {
        var index = draft.Index.Probe(calibration.ProbeId);
        return (index < 0 || draft.Plan.Probes[index].Care.SecondPerson) && PersonNames.AreTypedAlike(calibration.ProposedBy, by) ? No(TurnedDownKind.Conflict, "by", Reason.Of("review.second_person", calibration.ProposedBy)) : null;
    }

    private static bool Repeats(Calibration done, CalibrationReviewed said) =>
        done.ReviewedBy is { } earlier && (earlier == said.By.Trim() || PersonNames.AreSame(earlier, said.By)) && said.Accepted == !done.Objected;

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
