using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Pumps that follow a wrong value: the controller's number looks right, and the water is not. Said, never commanded.</summary>
internal static class FollowFold
{
    // A pump that stands because of a wrong value follows it too; one that has not run for a day is taken out of use.
    private static readonly TimeSpan InUse = TimeSpan.FromHours(24);

    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Pumps.Length; i++)
        {
            var probe = draft.Index.Follows[i];
            if (probe < 0) continue;
            var cause = IsInUse(draft.Pumps[i], now) ? Wrong(draft, draft.Plan.Pumps[i], probe) : null;
            var key = draft.Index.FollowKeys[i];
            // Who takes a failed probe out has not mended it: what its signal did is looked at again in the pool's own water.
            if (cause is null && draft.Probes[probe].Work.Holds(now) && draft.Alarms.IsActive(key)) continue;
            if (cause is not null || draft.Alarms.Knows(key))
                draft.Alarms.Look(RuleBook.PumpsFollowWrongValue, key, draft.Plan.Pumps[i].Id, cause is not null, now, () => cause!);
        }
    }

    private static bool IsInUse(PumpState pump, Instant now) =>
        pump.Activity == PumpActivity.Running || (pump.Activity != PumpActivity.Fault && pump.Run.RanAt.IsSet && now - pump.Run.RanAt < InUse);

    private static Reason? Wrong(Draft draft, PumpPlan pump, int index)
    {
        var (plan, probe) = (draft.Plan.Probes[index], draft.Probes[index]);
        if (probe.Signal.Standing is Standing.Failure or Standing.OutOfSpecification || draft.Alarms.IsActive(draft.Index.SilentKeys[index]))
            return Reason.Of("follow.signal_is_wrong", pump.Name, plan.Name);
        // What a controller makes of a raw signal is not known here, so only a panel-scaled number can be called wrong by its bias.
        if (plan.Origin != SignalOrigin.PanelScaled || !probe.Trust.Bias.IsKnown) return null;
        var bias = probe.Trust.Bias;
        if (probe.Trust.Standing == Standing.OutOfSpecification)
            return Reason.Of(bias.Value > 0 ? "follow.reads_high" : "follow.reads_low", pump.Name, plan.Name, Math.Abs(bias.Value), bias.Expanded, plan.Measurand.Unit());
        return probe.Trust.Standing == Standing.MaintenanceRequired && draft.OperatingLimit(index) is { } limit ? Beyond(pump, plan, probe, limit) : null;
    }

    // The display is inside the limits and the water, by the tests, is not.
    private static Reason? Beyond(PumpPlan pump, ProbePlan plan, ProbeState probe, LimitBound limit)
    {
        if (!probe.Last.Quality.IsGood() || plan.Measurand == Measurand.Orp) return null;
        var (shown, believed) = (probe.Last.Value, probe.Last.Value - probe.Trust.Bias.Value);
        var isHidden = (believed > limit.High && shown <= limit.High) || (believed < limit.Low && shown >= limit.Low);
        return isHidden ? Reason.Of("follow.hides_a_limit", pump.Name, plan.Name, shown, believed, plan.Measurand.Unit()) : null;
    }
}
