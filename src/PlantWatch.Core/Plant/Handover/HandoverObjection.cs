using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Handover;

/// <summary>Who hands over is somebody, and does not take over from himself in another spelling. Asked at the door: a journal of before it was asked keeps what was taken.</summary>
public static class HandoverObjection
{
    /// <summary>Why a person cannot write a note; null when nothing of this speaks against it, or it is written already.</summary>
    public static Outcome.TurnedDown? ToWrite(CircuitState state, Guid id, string by)
    {
        ArgumentNullException.ThrowIfNull(state);
        // Sent again: other words are said of that.
        return id == state.Handover.Id || id == state.Handover.SignedId || PersonNames.SaysSomebody(by) ? null : Nobody;
    }

    /// <summary>Why a person cannot sign what waits; null when nothing of this speaks against it, or it is signed already.</summary>
    public static Outcome.TurnedDown? ToSign(CircuitState state, Guid id, string by)
    {
        ArgumentNullException.ThrowIfNull(state);
        // Sent again: other words are said of that.
        if (id == state.Handover.SignedId) return null;
        if (!PersonNames.SaysSomebody(by)) return Nobody;
        // A signature is a second pair of eyes.
        return state.Handover.Waits && PersonNames.AreSame(state.Handover.From, by) ? Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "by", Reason.Of("handover.same_person")) : null;
    }

    private static Outcome.TurnedDown Nobody => Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
}
