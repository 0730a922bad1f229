using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Rules;

/// <summary>A manual check that is due by the clock.</summary>
/// <param name="PoolId">Where.</param>
/// <param name="Duty">Index of the duty in the pool's plan.</param>
/// <param name="What">What is to be tested.</param>
/// <param name="DueAt">The time it is due at.</param>
/// <param name="Overdue">The allowance after it has passed.</param>
public sealed record DueCheck(string PoolId, int Duty, ImmutableArray<Measurand> What, Instant DueAt, bool Overdue);

/// <summary>Which of a circuit's duties are open, and which of them a check fulfils.</summary>
public static class DueChecks
{
    /// <summary>A check counts for a duty from this long before its time, and is overdue this long after it (common practice: rounds are walked within the hour).</summary>
    public static TimeSpan Allowance { get; } = TimeSpan.FromMinutes(60);

    /// <summary>The open duties of all pools at an instant, oldest first; none of a pool that nobody bathes in. A duty replaced by its next time is history, not due.</summary>
    public static ImmutableArray<DueCheck> At(CircuitPlan plan, ImmutableArray<PoolState> pools, Instant now)
    {
        if (!SiteClock.TryOf(plan.TimeZone, out var clock)) return [];
        var open = ImmutableArray.CreateBuilder<DueCheck>();
        foreach (var pool in plan.Pools.Where(p => MayBatheIn(pools, p.Id)))
            for (var duty = 0; duty < pool.Duties.Length; duty++)
                if (Open(clock, pool, duty, DoneAt(pools, pool.Id, duty), now) is { } due) open.Add(due);
        open.Sort((a, b) => a.DueAt.CompareTo(b.DueAt) is not 0 and var byTime ? byTime : ByPlace(a, b));
        return open.DrainToImmutable();
    }

    /// <summary>True when the check tested everything the duty asks for; combined chlorine counts as tested by free and total.</summary>
    public static bool Covers(CheckDuty duty, ManualCheck check)
    {
        foreach (var measurand in duty.What)
            if (!Tested(check, measurand)) return false;
        return !duty.What.IsDefaultOrEmpty;
    }

    /// <summary>The pool's <see cref="PoolState.DutyDoneAt"/> after a check: the newest sample time that covered each duty.</summary>
    public static ImmutableArray<Instant> DoneAfter(PoolPlan pool, PoolState state, ManualCheck check)
    {
        var done = ImmutableArray.CreateBuilder<Instant>(pool.Duties.Length);
        for (var i = 0; i < pool.Duties.Length; i++)
        {
            var before = i < state.DutyDoneAt.Length ? state.DutyDoneAt[i] : Instant.Never;
            done.Add(Covers(pool.Duties[i], check) ? Instant.Later(before, check.SampledAt) : before);
        }

        return done.DrainToImmutable();
    }

    private static bool Tested(ManualCheck check, Measurand measurand) => measurand == Measurand.CombinedChlorine
        ? check.Result(Measurand.FreeChlorine) is not null && check.Result(Measurand.TotalChlorine) is not null
        : check.Result(measurand) is not null;

    private static DueCheck? Open(SiteClock clock, PoolPlan pool, int duty, Instant doneAt, Instant now)
    {
        if (!DutyTimes.TryNewest(clock, pool.Duties[duty].At, now, Allowance, out var due, out var opens)) return null;
        return doneAt >= opens ? null : new(pool.Id, duty, pool.Duties[duty].What, due, now > due + Allowance);
    }

    private static bool MayBatheIn(ImmutableArray<PoolState> pools, string poolId)
    {
        foreach (var pool in pools)
            if (pool.Id == poolId) return pool.Operation.MayBatheIn;
        return true;
    }

    private static Instant DoneAt(ImmutableArray<PoolState> pools, string poolId, int duty)
    {
        foreach (var pool in pools)
            if (pool.Id == poolId) return duty < pool.DutyDoneAt.Length ? pool.DutyDoneAt[duty] : Instant.Never;
        return Instant.Never;
    }

    private static int ByPlace(DueCheck a, DueCheck b) =>
        string.CompareOrdinal(a.PoolId, b.PoolId) is not 0 and var byPool ? byPool : a.Duty.CompareTo(b.Duty);
}
