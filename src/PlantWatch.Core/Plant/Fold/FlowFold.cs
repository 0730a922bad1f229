using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A flow switch: without sample flow its probes see standing water, and their alarms are suppressed by design.</summary>
internal static class FlowFold
{
    /// <summary>Whether the cell of a probe has flow; null when it has no switch or nothing was heard of it.</summary>
    public static bool? Of(Draft draft, int index)
    {
        var flowSwitch = draft.Index.FlowSwitches[index];
        if (flowSwitch < 0) return null;
        var last = draft.Probes[flowSwitch].Last;
        return last.Quality == Readings.Quality.NotReceived ? null : last.Raw >= 0.5;
    }

    public static void Look(Draft draft, int index, Instant at, double raw)
    {
        var plan = draft.Plan.Probes[index];
        var standing = raw < 0.5;
        draft.Alarms.Look(RuleBook.NoSampleFlow, RuleBook.NoSampleFlow.KeyFor(plan.Id), plan.Id, standing, at, () => Reason.Of("flow.none", plan.Name));
        draft.Alarms.Regard(at);
    }
}
