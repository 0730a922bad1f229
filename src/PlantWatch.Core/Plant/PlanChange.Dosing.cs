using System.Collections.Immutable;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    // What was learned holds for this volume, these strokes and these products, and for the probes that showed it. What stands against a pump is not mended by a line in a file.
    private static ImmutableArray<DosingWatch> Dosing(CircuitState state, CircuitPlan next, PlanLineage lineage)
    {
        var (before, now) = (DosedWater.Of(state.Plan), DosedWater.Of(next));
        var known = Math.Min(before.Length, state.Dosing.Length);
        return [.. now.Select(water => Enumerable.Range(0, known).Select(i => Watch(state, i, before[i], next, water, lineage)).FirstOrDefault(watch => watch is not null) ?? new())];
    }

    private static DosingWatch? Watch(CircuitState state, int w, DosedWater before, CircuitPlan next, DosedWater now, PlanLineage lineage)
    {
        var (acid, chlorine) = (Kept(state.Plan, before.Acid, next, now.Acid, lineage), Kept(state.Plan, before.Chlorine, next, now.Chlorine, lineage));
        if (acid == PumpKept.Nothing && chlorine == PumpKept.Nothing) return null;
        return acid == PumpKept.Strokes && chlorine == PumpKept.Strokes && IsSameWater(state.Plan, before, next, now, lineage) ? state.Dosing[w] : state.Dosing[w].LearningAnew(acid, chlorine);
    }

    private static bool IsSameWater(CircuitPlan old, DosedWater before, CircuitPlan next, DosedWater now, PlanLineage lineage) =>
        before.VolumeCubicMetres.Equals(now.VolumeCubicMetres) && before.TurnoverHours.Equals(now.TurnoverHours)
        && before.Acid with { Index = now.Acid.Index } == now.Acid && before.Chlorine with { Index = now.Chlorine.Index } == now.Chlorine
        && IsSameProbe(old, before.Ph, next, now.Ph, lineage) && IsSameProbe(old, before.Orp, next, now.Orp, lineage);

    private static PumpKept Kept(CircuitPlan old, DosedBy before, CircuitPlan next, DosedBy now, PlanLineage lineage)
    {
        var (was, pump) = (old.Pumps[before.Index], next.Pumps[now.Index]);
        if (!lineage.Pumps.Any(pair => pair.Old == was && pair.Next == pump)) return PumpKept.Nothing;
        return was.StrokesAre == pump.StrokesAre && was.StrokesTopic is null == pump.StrokesTopic is null ? PumpKept.Strokes : PumpKept.Pump;
    }

    private static bool IsSameProbe(CircuitPlan old, int before, CircuitPlan next, int now, PlanLineage lineage)
    {
        if (before < 0 || now < 0) return before == now;
        var (was, probe) = (old.Probes[before], next.Probes[now]);
        return lineage.Probes.Any(pair => pair.Old == was && pair.Next == probe) && !MeansSomethingElse(was, probe);
    }
}
