using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A dosing pump that runs into standing water. Said at once, never commanded: the interlock belongs into the plant.</summary>
internal static class DosingFlowFold
{
    // What strokes of the last minute are of.
    private static readonly TimeSpan ToldOf = TimeSpan.FromMinutes(1);

    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Pumps.Length; i++)
        {
            var standing = Standing(draft, i);
            if (standing is null == draft.Pumps[i].StandsSince.IsSet) draft.Pumps[i] = draft.Pumps[i] with { StandsSince = standing is null ? Instant.Never : now, StrokesStanding = false };
            var cause = draft.Pumps[i] is { Activity: PumpActivity.Running } or { StrokesStanding: true } ? standing : null;
            var key = draft.Index.NoFlowKeys[i];
            if (cause is not null && StoodUnsafe(draft, key) is { } stood) cause = stood;
            if (cause is not null || draft.Alarms.Knows(key))
                draft.Alarms.Look(RuleBook.DosesWithoutFlow, key, draft.Plan.Pumps[i].Id, cause is not null, now, () => cause!);
            Restart(draft, i, now);
        }
    }

    /// <summary>A pump told its strokes: some of them are of standing water, none are, or it cannot be told and stays as it was. By its strokes it doses, whatever it says that it does.</summary>
    public static void Stroked(Draft draft, int pump, double count, Instant at)
    {
        if (draft.Pumps[pump] is { StandsSince: { IsSet: true } since } known && InStandingWater(draft.Plan.Pumps[pump].StrokesAre, known.Strokes, count, since, at) is { } strokes)
            draft.Pumps[pump] = known with { StrokesStanding = strokes };
    }

    // The strokes of one minute may be those before the water stood, and so may what a counter rose by since it was last told.
    private static bool? InStandingWater(StrokeCount are, LastReading last, double count, Instant since, Instant at)
    {
        if (are == StrokeCount.LastMinute) return count > 0 ? at - ToldOf >= since ? true : null : false;
        return last.MeasuredAt.IsSet && last.MeasuredAt >= since ? StrokeRise.Of(last.Value, count, at - last.MeasuredAt) is { } rose ? rose > 0 : null : null;
    }

    // The gas gathers while the water stands, and comes when it moves again.
    private static void Restart(Draft draft, int pump, Instant now)
    {
        var (key, plan) = (draft.Index.RestartKeys[pump], draft.Plan.Pumps[pump]);
        var restarted = StoodUnsafe(draft, draft.Index.NoFlowKeys[pump]) is not null && draft.Index.Circulation is >= 0 and var circulation && !CirculationFold.IsLost(draft, circulation);
        if (restarted || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.RestartedUnsafe, key, plan.Id, restarted, now, () => Reason.Of("dosing.restarted_unsafe", plan.Name));
    }

    // Said to be made safe it is safe once the pump no longer says that it runs. A cell that fills after the circulation has come back must not take away that the pump dosed into standing water.
    private static Reason? StoodUnsafe(Draft draft, string key) =>
        draft.Alarms.Find(key) is { LatchHeld: true, Cause: { Code: "dosing.without_circulation" } cause } alarm && (alarm.MadeSafe is null || alarm.Active) ? cause : null;

    private static Reason? Standing(Draft draft, int pump)
    {
        var name = draft.Plan.Pumps[pump].Name;
        if (draft.Index.Circulation is >= 0 and var circulation && CirculationFold.IsLost(draft, circulation))
            return Reason.Of("dosing.without_circulation", name, draft.Plan.Probes[circulation].Name, draft.Probes[circulation].Last.Value, Measurand.CirculationFlow.Unit());
        if (draft.Index.DosingSwitches[pump] is not (>= 0 and var flow) || draft.Probes[flow].Last is not { Quality: not Quality.NotReceived, Raw: < 0.5 }) return null;
        return Reason.Of("dosing.without_sample_flow", name, draft.Plan.Probes[flow].Name);
    }
}
