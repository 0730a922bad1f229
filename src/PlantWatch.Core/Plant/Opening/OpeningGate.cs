using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>What has to be so before a pool opens, line by line. Passing opens nothing: a person does, by an act of their own.</summary>
public static class OpeningGate
{
    /// <summary>The lines of a pool. It may open when every one is passed; what is not known is not passed.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="state">What is known of it.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="now">The time of opening.</param>
    public static ImmutableArray<GateLine> Of(CircuitPlan plan, CircuitState state, PoolPlan pool, Instant now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(pool);
        if (state.Pools.FirstOrDefault(p => p.Id == pool.Id) is not { } known) return [new("pool", GateWord.NotKnown, Reason.Of("pool.unknown", pool.Id))];
        var tests = GateTests.Of(pool);
        return
        [
            .. tests.Select(measurand => GateTests.Line(plan, known, measurand, now)),
            Bottom(known, now),
            Limits(known, tests),
            .. GateAlarms.Lines(state, pool.Id),
            Incident(plan, state, pool),
            .. GateAlarms.Laboratory(state, pool.Id),
            GatePlant.Flow(state, pool.Id, now),
            GatePlant.Pumps(state, pool.Id),
        ];
    }

    private static GateLine Bottom(PoolState pool, Instant now)
    {
        if (pool.BottomVisible is not { } visible) return new("bottom", GateWord.NotKnown, Reason.Of("gate.bottom_missing"));
        if (!visible) return new("bottom", GateWord.NotPassed, Reason.Of("gate.bottom_hidden"));
        return GateTests.Stale(pool, pool.BottomSeenAt, now) is { } stale
            ? new("bottom", GateWord.NotKnown, stale == "too_old"
                ? Reason.Of("gate.bottom_too_old", (now - pool.BottomSeenAt).TotalMinutes) : Reason.Of("gate.bottom_before_closing", (now - pool.BottomSeenAt).TotalMinutes))
            : new("bottom", GateWord.Passed, Reason.Of("gate.bottom_seen", (now - pool.BottomSeenAt).TotalMinutes));
    }

    private static GateLine Limits(PoolState pool, Measurand[] tests)
    {
        if (pool.Limits.Undecided.FirstOrDefault(row => tests.Any(m => m.Limiting() == row.Quantity)) is { } row)
            return new("limits", GateWord.NotKnown, Reason.Of("gate.limits_undecided", row.RowId, row.Needs));
        return pool.Limits.Word switch
        {
            LimitsWord.InForce => new("limits", GateWord.Passed, Reason.Of("gate.limits_in_force")),
            LimitsWord.OwnOnly => new("limits", GateWord.Passed, Reason.Of("gate.limits_own")),
            LimitsWord.Unconfirmed => new("limits", GateWord.NotPassed, Reason.Of("gate.limits_unconfirmed", pool.Limits.Unconfirmed.Length)),
            _ => new("limits", GateWord.NotPassed, Reason.Of("gate.limits_none")),
        };
    }

    private static GateLine Incident(CircuitPlan plan, CircuitState state, PoolPlan pool)
    {
        var open = state.Incidents.Values.FirstOrDefault(i => i.ClosesThePool || i.PoolId == pool.Id);
        if (open is null) return new("incident", GateWord.Passed, Reason.Of("gate.no_incident"));
        return new("incident", GateWord.NotPassed, Reason.Of("gate.incident_open", plan.Pools.FirstOrDefault(p => p.Id == open.PoolId)?.Name ?? open.PoolId));
    }
}
