using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A pool was filled anew: nothing tested before is of this water, and its ORP line belonged to the old. The bias of a pH probe stays: it is the probe's.</summary>
internal static class NewWater
{
    public static void In(Draft draft, int pool, Instant at)
    {
        // Alarms stand until a test of the new water clears them.
        var state = draft.Pools[pool];
        draft.Pools[pool] = state with { Manual = state.Manual.Clear(), Doubts = [], DutyDoneAt = [], BottomVisible = null, BottomSeenAt = Instant.Never, Bathers = null, FilledAt = at };
        for (var i = 0; i < draft.Probes.Length; i++)
            if (draft.Plan.Probes[i].Measurand == Measurand.Orp && draft.Index.PoolOf[i] is var seen && (seen == pool || draft.Plan.Probes[i].PoolId is null))
                draft.Probes[i] = draft.Probes[i] with { Trust = ProbeTrust.New, Trail = default };
        SupervisionFold.BeginAnew(draft, pool);
        AskForNoRepeat(draft, state.Id, at);
        InForceFold.One(draft, pool, at);
    }

    // Only these: a doubt is about one sample, and nobody can take that of the old water again. What was found outside stands until the new water is tested.
    private static void AskForNoRepeat(Draft draft, string pool, Instant at)
    {
        foreach (var alarm in draft.Alarms.All)
            if (alarm.Rule == RuleBook.RepeatTest.Number && alarm.Subject.StartsWith(pool + "/", StringComparison.Ordinal))
                draft.Alarms.Look(RuleBook.RepeatTest, alarm.Key, alarm.Subject, holds: false, at, () => alarm.Cause);
    }
}
