using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Time went on: who is silent, whose clock is wrong, which check is overdue, which delay has run out.</summary>
internal static class TickFold
{
    public static void Fold(Draft draft, Instant now)
    {
        if (now <= draft.Watermark) return;
        draft.Watermark = now;
        for (var i = 0; i < draft.Probes.Length; i++) LookAtProbe(draft, i, draft.Plan.Probes[i], draft.Probes[i], now);
        DutyFold.Look(draft, now);
        DoseFold.Tick(draft, now);
        draft.Alarms.Wait(now);
    }

    private static void LookAtProbe(Draft draft, int index, ProbePlan plan, ProbeState probe, Instant now)
    {
        if (probe.Last.Quality == Quality.NotReceived) return;
        var silentFor = now - probe.Last.ReceivedAt;
        var silent = silentFor > SignalLimits.SilentAfter(plan.Every);
        var silentKey = draft.Index.SilentKeys[index];
        if (silent || draft.Alarms.Knows(silentKey))
            draft.Alarms.Look(RuleBook.Silent, silentKey, plan.Id, silent, now, () => Reason.Of("probe.silent", plan.Name, silentFor.TotalMinutes));

        var lag = probe.Last.ReceivedAt - probe.Last.MeasuredAt;
        var wrong = !silent && lag > DeviceClock.LateAfter(plan.Every);
        var clockKey = draft.Index.ClockKeys[index];
        if (wrong || draft.Alarms.Knows(clockKey))
            draft.Alarms.Look(RuleBook.ClockDoubted, clockKey, plan.Id, wrong, now, () => Reason.Of("probe.clock_behind", plan.Name, lag.TotalMinutes));
    }
}
