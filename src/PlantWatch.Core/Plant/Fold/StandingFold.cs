using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A probe that cannot be believed is an alarm of its own: only tests by hand protect the water until it is mended.</summary>
internal static class StandingFold
{
    public static void Look(Draft draft, int index, Instant at)
    {
        var probe = draft.Probes[index];
        var standing = Standings.Worse(probe.Signal.Standing, probe.Trust.Standing);
        var bad = standing is Standing.OutOfSpecification or Standing.Failure;
        draft.Alarms.Look(RuleBook.ProbeNotTrusted, RuleBook.ProbeNotTrusted.KeyFor(probe.Id), probe.Id, bad, at, () => Cause(draft.Plan.Probes[index], probe));
    }

    private static Reason Cause(ProbePlan plan, ProbeState probe)
    {
        var reasons = Standings.IsWorse(probe.Signal.Standing, probe.Trust.Standing) ? probe.Signal.Reasons : probe.Trust.Reasons;
        return reasons.IsEmpty ? Reason.Of("probe.not_trusted", plan.Name) : reasons[0];
    }
}
