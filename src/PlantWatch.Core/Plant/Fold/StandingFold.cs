using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A probe that cannot be believed is an alarm of its own: only tests by hand protect the water until it is mended.</summary>
internal static class StandingFold
{
    public static void Look(Draft draft, int index, Instant at)
    {
        var probe = draft.Probes[index];
        var key = draft.Index.TrustKeys[index];
        // Either is enough: a cell without flow says nothing of the probe, so it cannot take back what the checks said.
        var bad = IsBad(probe.Signal.Standing) || IsBad(probe.Trust.Standing);
        if (bad == draft.Alarms.IsActive(key)) return;
        // Nor can work on the probe take back what its signal said: it is looked at again in the pool's own water.
        if (!bad && probe.Signal.Standing == Standing.CheckFunction) return;
        Tell(draft, key, draft.Plan.Probes[index], probe, bad, at);
    }

    private static void Tell(Draft draft, string key, ProbePlan plan, ProbeState probe, bool bad, Instant at) =>
        draft.Alarms.Look(RuleBook.ProbeNotTrusted, key, probe.Id, bad, at, () => Cause(plan, probe));

    private static bool IsBad(Standing standing) => standing is Standing.OutOfSpecification or Standing.Failure;

    private static Reason Cause(ProbePlan plan, ProbeState probe)
    {
        var bySignal = IsBad(probe.Signal.Standing) && (!IsBad(probe.Trust.Standing) || Standings.IsWorse(probe.Signal.Standing, probe.Trust.Standing));
        var reasons = bySignal ? probe.Signal.Reasons : probe.Trust.Reasons;
        return reasons.IsEmpty ? Reason.Of("probe.not_trusted", plan.Name) : reasons[0];
    }
}
