using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>Whether the plant runs: probes heard, water in their cells, circulation, no pump in fault.</summary>
internal static class GatePlant
{
    // Who sees the mixed return sees this pool too.
    public static GateLine Flow(CircuitState state, string pool, Instant now)
    {
        var probes = state.Plan.Probes.Select((plan, i) => (plan, state: state.Probes[i])).Where(p => p.plan.PoolId is null || p.plan.PoolId == pool).ToArray();
        if (probes.Length == 0) return new("flow", GateWord.Passed, Reason.Of("gate.not_measured"));
        foreach (var (plan, probe) in probes)
            if (Silent(plan, probe, now) is { } silent) return new("flow", GateWord.NotKnown, silent);
        foreach (var (plan, _) in probes)
            if (NoFlow(state, plan, now) is { } still) return still;
        return new("flow", GateWord.Passed, Reason.Of("gate.runs"));
    }

    public static GateLine Pumps(CircuitState state, string pool)
    {
        for (var i = 0; i < state.Pumps.Length; i++)
        {
            var plan = state.Plan.Pumps[i];
            if (plan.PoolId is not null && plan.PoolId != pool) continue;
            var alarm = state.Alarms.GetValueOrDefault(RuleBook.PumpFault.KeyFor(plan.Id));
            if (state.Pumps[i].Activity == PumpActivity.Fault || alarm is { Active: true } || alarm is { PendingSince.IsSet: true })
                return new("pumps", GateWord.NotPassed, Reason.Of("gate.pump_fault", plan.Name));
        }

        return new("pumps", GateWord.Passed, Reason.Of("gate.no_pump_fault"));
    }

    private static Reason? Silent(ProbePlan plan, ProbeState probe, Instant now)
    {
        if (probe.Last.Quality == Quality.NotReceived) return Reason.Of("gate.never_heard", plan.Name);
        return now - probe.Last.ReceivedAt > SignalLimits.SilentAfter(plan.Every) ? Reason.Of("gate.silent", plan.Name, (now - probe.Last.ReceivedAt).TotalMinutes) : null;
    }

    private static GateLine? NoFlow(CircuitState state, ProbePlan plan, Instant now)
    {
        if (plan.Measurand == Measurand.CirculationFlow && !(state.Probes[state.Plan.Probes.IndexOf(plan)].Last.Value >= state.Plan.CirculationLost))
            return new("flow", GateWord.NotPassed, Reason.Of("gate.no_circulation", plan.Name));
        var guard = plan.Measurand == Measurand.SampleFlow ? plan : state.Plan.Probes.FirstOrDefault(p => p.Id == plan.FlowSwitchId);
        if (guard is null) return null;
        var last = state.Probes[state.Plan.Probes.IndexOf(guard)];
        if (Silent(guard, last, now) is { } silent) return new("flow", GateWord.NotKnown, silent);
        return last.Last.Raw >= 0.5 ? null : new("flow", GateWord.NotPassed, Reason.Of("gate.no_flow", guard.Name));
    }
}
