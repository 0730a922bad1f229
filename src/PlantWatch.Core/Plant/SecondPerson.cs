using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>Where the plant asks for a second person, the first one is no second one in another spelling. Asked at the door: a journal of before it was asked keeps what was taken.</summary>
public static class SecondPerson
{
    /// <summary>Why a person cannot approve or review a calibration; null when nothing speaks against it, or there is none that waits for it.</summary>
    public static Outcome.TurnedDown? Objection(CircuitState state, Guid calibration, string by)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Calibrations.FirstOrDefault(c => c.Id == calibration) is not { } first) return null;
        // Sent again, or decided by another meanwhile: other words are said of that.
        if (first.Status != CalibrationStatus.Proposed && !first.WaitsForReview) return null;
        if (state.Plan.Probes.FirstOrDefault(p => p.Id == first.ProbeId) is { Care.SecondPerson: false }) return null;
        if (!PersonNames.SaysSomebody(by)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        return PersonNames.AreSame(first.ProposedBy, by) ? Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "by", Reason.Of("review.second_person", first.ProposedBy)) : null;
    }
}
