using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The turnover as the meter shows it, hour by hour, against the one that the plant was designed for.</summary>
internal static class TurnoverFold
{
    /// <summary>A circulation came in. Water that stands or goes backwards is no turnover, and other rules speak of it.</summary>
    public static void Look(Draft draft, ProbePlan probe, Instant at, double flow)
    {
        // Of two meters the first one counts: a mean of both would be the flow of neither.
        if (draft.Index.Circulation < 0 || draft.Plan.Probes[draft.Index.Circulation].Id != probe.Id) return;
        if (flow >= draft.Plan.CirculationLost && !BackwashFold.Holds(draft, at)) draft.Flow = draft.Flow.With(at, flow);
        if (draft.Plan.DesignFlow is not { } design || draft.Flow.MeanOf(at) is not { } mean) return;
        var key = RuleBook.TurnoverShort.KeyFor(probe.Id);
        // While it is low or lost that alarm says all there is to say.
        var holds = !draft.Alarms.IsActive(RuleBook.CirculationLow.KeyFor(probe.Id)) && mean < design * (draft.Alarms.IsActive(key) ? TurnoverShortfall.Back : TurnoverShortfall.Enough);
        if (holds || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.TurnoverShort, key, probe.Id, holds, at, () => Cause(draft, probe.Name, mean, design, at));
    }

    private static Reason Cause(Draft draft, string name, double mean, double design, Instant at)
    {
        var signs = TurnoverShortfall.Signs(draft.Plan, draft.Filters, i => draft.Probes[i].Last, mean, at);
        Fact[] facts = [name, mean, design, draft.Plan.PoolCubicMetres / mean, draft.Plan.TurnoverHours ?? 0, Measurand.CirculationFlow.Unit()];
        if (signs.Any(s => s.Sign == FilterSign.Loaded)) return Reason.Of("turnover.short_by_filter", [.. facts, signs.First(s => s.Sign == FilterSign.Loaded).Name]);
        return signs.Any(s => s.Sign == FilterSign.AsClean) && signs.All(s => s.Sign is FilterSign.AsClean or FilterSign.Unknown)
            ? Reason.Of("turnover.short_elsewhere", facts) : Reason.Of("turnover.short", facts);
    }
}
