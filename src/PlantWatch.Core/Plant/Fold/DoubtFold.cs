using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Doubt sets a clock: a doubted test is to be repeated, and what no probe watches is to be tested by hand, or it is an alarm.</summary>
internal static class DoubtFold
{
    // As with all that is learned from a check: what is older says how the water was.
    private static readonly TimeSpan StillLive = TimeSpan.FromHours(12);

    internal static readonly Measurand[] Watched = [Measurand.Ph, Measurand.FreeChlorine, Measurand.Bromine];

    public static void Learn(Draft draft, int pool, ManualCheck check, Plausibility plausibility, IReadOnlyList<Judgement> judgements, Instant now)
    {
        if (now - check.SampledAt > StillLive) return;
        var known = draft.Pools[pool];
        var after = TestDeadlines.After(draft.Plan, known.Doubts, check, m => plausibility.IsSuspect(m) || IsDoubted(judgements, m), now);
        if (known.Doubts.IsDefault || !after.AsSpan().SequenceEqual(known.Doubts.AsSpan())) draft.Pools[pool] = known with { Doubts = after };
    }

    public static void Tick(Draft draft, Instant now)
    {
        // Nothing is blind where no alarm stands and nobody works, and most of the time that is so.
        var quiet = draft.Alarms.All.Count == 0 && !Array.Exists(draft.Probes, p => p.Work.IsOpen);
        for (var pool = 0; pool < draft.Pools.Length; pool++)
            for (var i = 0; i < Watched.Length; i++)
                if (!quiet || !draft.Pools[pool].Doubts.IsDefaultOrEmpty) Look(draft, pool, Watched[i], draft.Index.RepeatKeys[pool][i], now);
    }

    private static void Look(Draft draft, int pool, Measurand measurand, string key, Instant now)
    {
        var wanted = WantedTests.Of(draft.Plan, draft.Probes, draft.Pools[pool], measurand, draft.Alarms.Find);
        var overdue = wanted is not null && now > wanted.By;
        if (overdue || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.TestWanted, key, $"{draft.Plan.Pools[pool].Id}/{measurand.Key()}", overdue, now, () => wanted!.Why);
    }

    // An ORP that stands against its line is the chlorine test's quarrel.
    internal static bool IsDoubted(IReadOnlyList<Judgement> judgements, Measurand tested)
    {
        foreach (var judgement in judgements)
            if (judgement.Verdict == Verdict.CheckSuspect && (judgement.Measurand == Measurand.Orp ? Measurand.FreeChlorine : judgement.Measurand) == tested) return true;
        return false;
    }
}
