using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>Which probe a dosing pump follows: the one the plant file names, else the panel-scaled one that its product is dosed by.</summary>
/// <remarks>
/// A raw probe is taken for a controller's only when the plant file says so: what its controller makes of it is not known here.
/// Chlorine is dosed by a free-chlorine probe before ORP where there are both (common practice).
/// </remarks>
public static class PumpFollows
{
    /// <summary>Index of the probe in the circuit's plan; -1 when none is known.</summary>
    public static int Of(CircuitPlan plan, PumpPlan pump)
    {
        if (pump.FollowsProbeId is { } named) return IndexOf(plan.Probes, p => p.Id == named);
        return DosingAims.Of(pump.Doses) switch
        {
            DosingAim.LowersPh or DosingAim.RaisesPh => Panel(plan, pump, Measurand.Ph),
            DosingAim.AddsChlorine => Panel(plan, pump, Measurand.FreeChlorine) is >= 0 and var cell ? cell : Panel(plan, pump, Measurand.Orp),
            _ => -1,
        };
    }

    // Of its own pool before one in the common return.
    private static int Panel(CircuitPlan plan, PumpPlan pump, Measurand measurand)
    {
        var own = IndexOf(plan.Probes, p => Fits(p, measurand) && p.PoolId == pump.PoolId);
        return own >= 0 ? own : IndexOf(plan.Probes, p => Fits(p, measurand) && (p.PoolId is null || pump.PoolId is null));
    }

    private static bool Fits(ProbePlan probe, Measurand measurand) => probe.Measurand == measurand && probe.Origin == SignalOrigin.PanelScaled;

    private static int IndexOf(ImmutableArray<ProbePlan> probes, Predicate<ProbePlan> fits)
    {
        for (var i = 0; i < probes.Length; i++)
            if (fits(probes[i])) return i;
        return -1;
    }
}
