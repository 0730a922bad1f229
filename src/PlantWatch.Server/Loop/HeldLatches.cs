using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Loop;

/// <summary>Nobody sees the alarms of a circuit that the plant file no longer has: while a latch of it holds, the circuit stays.</summary>
internal static class HeldLatches
{
    /// <summary>Why a circuit cannot be left out; null when it can.</summary>
    public static string? Of(CircuitState state)
    {
        string[] held = [.. state.Alarms.Values.Where(a => a.LatchHeld).Select(a => $"{a.Rule} {Wording.English.OfRule(a.Rule, "title")} ({NameOf(state.Plan, a.Subject)})")];
        return held.Length == 0 ? null
            : $"the circuit '{state.Plan.Id}' cannot be left out while this stands in it: {string.Join("; ", held)}. Put the circuit back, have each seen to, acknowledged and reset, and leave it out then";
    }

    private static string NameOf(CircuitPlan plan, string id) => plan.Pumps.FirstOrDefault(p => p.Id == id)?.Name ?? plan.Probes.FirstOrDefault(p => p.Id == id)?.Name ?? plan.Pools.FirstOrDefault(p => p.Id == id)?.Name ?? id;
}
