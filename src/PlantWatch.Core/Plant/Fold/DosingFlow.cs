using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What tells whether the water that a dosing pump is dosed into, or by, flows.</summary>
internal static class DosingFlow
{
    /// <summary>Index of the flow switch: that of the probe the pump follows, else the one of its own pool, or of the common return; -1 when there is none.</summary>
    public static int SwitchOf(CircuitPlan plan, PumpPlan pump, int follows, int[] switches)
    {
        if (follows >= 0 && switches[follows] >= 0) return switches[follows];
        var own = Array.FindIndex([.. plan.Probes], p => p.Measurand == Measurand.SampleFlow && p.PoolId == pump.PoolId);
        return own >= 0 || plan.Pools.Length != 1 ? own : Array.FindIndex([.. plan.Probes], p => p.Measurand == Measurand.SampleFlow);
    }
}
