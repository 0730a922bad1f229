using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Time went on: who is silent, whose clock is wrong, which check is overdue, which delay has run out.</summary>
internal static class TickFold
{
    // The shell ticks every second: a gap beyond this says that nobody listened, not that nobody spoke.
    private static readonly TimeSpan LongestPause = TimeSpan.FromMinutes(1);

    public static void Fold(Draft draft, Instant now)
    {
        if (now <= draft.Watermark) return;
        if (now - draft.Watermark > LongestPause) draft.ListeningSince = now;
        draft.Watermark = now;
        for (var i = 0; i < draft.Probes.Length; i++) LookAtProbe(draft, i, draft.Plan.Probes[i], draft.Probes[i], now);
        InForceFold.Tick(draft, now);
        DutyFold.Look(draft, now);
        DoubtFold.Tick(draft, now);
        FollowFold.Tick(draft, now);
        DosingFlowFold.Tick(draft, now);
        DayDoseFold.Tick(draft, now);
        SupervisionFold.Tick(draft, now);
        FilterFold.Tick(draft, now);
        ReagentFold.Tick(draft, now);
        DoseFold.Tick(draft, now);
        LabFold.Tick(draft, now);
        TaskFold.Tick(draft, now);
        TankFold.Tick(draft, now);
        draft.Alarms.Wait(now);
        JobFold.Tick(draft, now);
    }

    private static void LookAtProbe(Draft draft, int index, ProbePlan plan, ProbeState probe, Instant now)
    {
        WorkFold.Close(draft, index, now);
        var silent = LookAtSilence(draft, index, plan, probe, now);
        if (probe.Last.Quality == Quality.NotReceived) return;
        var lag = probe.Last.ReceivedAt - probe.Last.MeasuredAt;
        var wrong = !silent && lag > draft.Index.LateAfter[index];
        var clockKey = draft.Index.ClockKeys[index];
        if (wrong || draft.Alarms.Knows(clockKey)) TellClock(draft, clockKey, plan, wrong, now, lag);
    }

    private static bool LookAtSilence(Draft draft, int index, ProbePlan plan, ProbeState probe, Instant now)
    {
        var key = draft.Index.SilentKeys[index];
        var never = probe.Last.Quality == Quality.NotReceived;
        var heard = never ? probe.ExpectedSince : probe.Last.ReceivedAt;
        // An alarm that stands is not taken back by a stop of ours: only a reading clears it.
        var since = draft.Alarms.IsActive(key) ? heard : Instant.Later(heard, draft.ListeningSince);
        var silent = now - since > draft.Index.SilentAfter[index];
        if (silent || draft.Alarms.Knows(key)) TellSilence(draft, key, plan, silent, now, never, heard);
        return silent;
    }

    // Apart, so that what a cause is made of is put together only when somebody asks for it, and not for every probe with every tick.
    private static void TellClock(Draft draft, string key, ProbePlan plan, bool wrong, Instant now, TimeSpan lag) =>
        draft.Alarms.Look(RuleBook.ClockDoubted, key, plan.Id, wrong, now, () => Reason.Of("probe.clock_behind", plan.Name, lag.TotalMinutes));

    private static void TellSilence(Draft draft, string key, ProbePlan plan, bool silent, Instant now, bool never, Instant heard) =>
        draft.Alarms.Look(RuleBook.Silent, key, plan.Id, silent, now, () => Reason.Of(never ? "probe.never_heard" : "probe.silent", plan.Name, (now - heard).TotalMinutes));
}
