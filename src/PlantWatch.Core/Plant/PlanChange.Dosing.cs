using System.Collections.Immutable;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    // What was learned holds for this volume, these strokes and these products, and for the probes that showed it.
    private static ImmutableArray<DosingWatch> Dosing(CircuitState state, CircuitPlan next, PlanLineage lineage)
    {
        var (before, now) = (DosedWater.Of(state.Plan), DosedWater.Of(next));
        return [.. now.Select(water => Enumerable.Range(0, Math.Min(before.Length, state.Dosing.Length)).Where(i => IsSameWater(state.Plan, before[i], next, water, lineage)).Select(i => state.Dosing[i]).FirstOrDefault() ?? new())];
    }

    private static bool IsSameWater(CircuitPlan old, DosedWater before, CircuitPlan next, DosedWater now, PlanLineage lineage) =>
        before.VolumeCubicMetres.Equals(now.VolumeCubicMetres) && before.TurnoverHours.Equals(now.TurnoverHours)
        && IsSamePump(old, before.Acid, next, now.Acid, lineage) && IsSamePump(old, before.Chlorine, next, now.Chlorine, lineage)
        && IsSameProbe(old, before.Ph, next, now.Ph, lineage) && IsSameProbe(old, before.Orp, next, now.Orp, lineage);

    private static bool IsSamePump(CircuitPlan old, DosedBy before, CircuitPlan next, DosedBy now, PlanLineage lineage)
    {
        var (was, pump) = (old.Pumps[before.Index], next.Pumps[now.Index]);
        return lineage.Pumps.Any(pair => pair.Old == was && pair.Next == pump) && before with { Index = now.Index } == now && was.StrokesAre == pump.StrokesAre && was.StrokesTopic is null == pump.StrokesTopic is null;
    }

    private static bool IsSameProbe(CircuitPlan old, int before, CircuitPlan next, int now, PlanLineage lineage)
    {
        if (before < 0 || now < 0) return before == now;
        var (was, probe) = (old.Probes[before], next.Probes[now]);
        return lineage.Probes.Any(pair => pair.Old == was && pair.Next == probe) && !MeansSomethingElse(was, probe);
    }
}
