using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant;

/// <summary>A test by hand that is wanted by a time.</summary>
/// <param name="Measurand">What to test.</param>
/// <param name="By">Until when.</param>
/// <param name="Why">Why.</param>
public sealed record WantedTest(Measurand Measurand, Instant By, Reason Why);

/// <summary>Which tests by hand a doubt asks for, and until when: a doubted test its repeat, a value that no probe watches a test every few hours.</summary>
public static class WantedTests
{
    /// <summary>The test of a measurand that is wanted in a pool; null when none is.</summary>
    /// <param name="state">The circuit.</param>
    /// <param name="pool">The pool's place in the plan.</param>
    /// <param name="measurand">pH or free chlorine.</param>
    public static WantedTest? Of(CircuitState state, int pool, Measurand measurand)
    {
        ArgumentNullException.ThrowIfNull(state);
        return Of(state.Plan, state.Probes, state.Pools[pool], measurand, key => state.Alarms.GetValueOrDefault(key));
    }

    internal static WantedTest? Of(CircuitPlan plan, IReadOnlyList<ProbeState> probes, PoolState pool, Measurand measurand, Func<string, AlarmRecord?> alarm)
    {
        var name = NameOf(plan, pool.Id);
        var repeat = Repeat(pool, name, measurand);
        return BlindSince(plan, probes, pool.Id, measurand, alarm) is { IsSet: true } since ? Sooner(repeat, WhileBlind(pool, name, measurand, since)) : repeat;
    }

    private static WantedTest? Repeat(PoolState pool, string name, Measurand measurand)
    {
        if (pool.Doubts.IsDefaultOrEmpty) return null;
        foreach (var doubt in pool.Doubts)
            if (doubt.Measurand == measurand) return new(measurand, doubt.By, Reason.Of("test.repeat_wanted", name, measurand.Key()));
        return null;
    }

    private static WantedTest WhileBlind(PoolState pool, string name, Measurand measurand, Instant since)
    {
        var tested = pool.Manual.TryGetValue(measurand, out var value) && !value.Suspect ? value.SampledAt : Instant.Never;
        return new(measurand, Instant.Later(since, tested) + TestDeadlines.WhileBlind, Reason.Of("test.nothing_watches", name, measurand.Key()));
    }

    // Only what was watched can go blind: a pool without a probe is tested by its duties. ORP stands in for chlorine, as it does in the plant room.
    private static Instant BlindSince(CircuitPlan plan, IReadOnlyList<ProbeState> probes, string pool, Measurand measurand, Func<string, AlarmRecord?> alarm)
    {
        var since = Instant.Never;
        for (var i = 0; i < probes.Count; i++)
        {
            var probe = plan.Probes[i];
            if ((probe.PoolId is not null && probe.PoolId != pool) || !Watches(probe.Measurand, measurand)) continue;
            if (!IsBlind(probe, probes[i], alarm, out var from)) return Instant.Never;
            since = Instant.Later(since, from);
        }

        return since;
    }

    private static bool Watches(Measurand probe, Measurand tested) => probe == tested || (tested == Measurand.FreeChlorine && probe == Measurand.Orp);

    private static bool IsBlind(ProbePlan plan, ProbeState probe, Func<string, AlarmRecord?> alarm, out Instant since)
    {
        since = probe.Work.IsOpen ? probe.Work.UnwatchedSince : Instant.Never;
        // Silent, not believed, or without flow: each has its alarm, and that knows since when.
        foreach (var key in (ReadOnlySpan<string>)[RuleBook.Silent.KeyFor(plan.Id), RuleBook.ProbeNotTrusted.KeyFor(plan.Id), plan.FlowSwitchId is { } flow ? RuleBook.NoSampleFlow.KeyFor(flow) : ""])
            if (key.Length > 0 && alarm(key) is { Active: true } standing) since = since.IsSet ? Instant.Earlier(since, standing.RaisedAt) : standing.RaisedAt;
        return since.IsSet;
    }

    private static WantedTest? Sooner(WantedTest? a, WantedTest b) => a is null || b.By < a.By ? b : a;

    private static string NameOf(CircuitPlan plan, string pool)
    {
        foreach (var known in plan.Pools)
            if (known.Id == pool) return known.Name;
        return pool;
    }
}
