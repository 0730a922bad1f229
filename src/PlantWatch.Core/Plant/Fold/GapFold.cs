using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What may have been lost is written down as a gap: nothing is missed in silence.</summary>
internal static class GapFold
{
    public static Outcome SessionLost(Draft draft, SessionLost said)
    {
        draft.Write(said.At, said.Since, draft.Plan.Id, new GapEntry(said.Since, said.At, Reason.Of("gap.session_lost", said.Session)));
        return Outcome.Done.Instance;
    }
}
