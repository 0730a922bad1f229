using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>A pool that came from another circuit.</summary>
/// <param name="PoolId">Its id now.</param>
/// <param name="Operation">How it was run there.</param>
public readonly record struct ArrivedPool(string PoolId, PoolOperation Operation);

/// <summary>What a circuit takes over of the circuits that its pools come from. The rest of what was known of them there stays there: it is other water. A new circuit takes over what is known of the instruments.</summary>
/// <param name="Pools">The pools and how they were run.</param>
/// <param name="Incidents">Incidents open in the water they come from, each as it concerns them.</param>
public sealed record Arrival(ImmutableArray<ArrivedPool> Pools, ImmutableArray<Incident> Incidents)
{
    /// <summary>Nothing came.</summary>
    public static Arrival Nothing { get; } = new([], []);

    /// <summary>Instruments as the rest of the plant knows them, for a circuit that was not there before: all circuits are tested with the same ones.</summary>
    public ImmutableArray<InstrumentState> Instruments { get; init; } = [];

    /// <summary>What comes into a circuit with a new plant file.</summary>
    /// <param name="before">The plant as it was.</param>
    /// <param name="next">The plant as it will be.</param>
    /// <param name="circuit">The circuit of the new plant.</param>
    /// <param name="known">What is known of a circuit of the old plant; null when nothing is.</param>
    public static Arrival In(PlantPlan before, PlantPlan next, string circuit, Func<string, CircuitState?> known)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(next);
        ArgumentNullException.ThrowIfNull(known);
        var (pools, incidents) = (ImmutableArray.CreateBuilder<ArrivedPool>(), ImmutableArray.CreateBuilder<Incident>());
        foreach (var from in Moved(before, next, circuit).GroupBy(m => m.From))
        {
            if (known(from.Key) is not { } state) continue;
            (string Old, string Now)[] moved = [.. from.Select(m => (m.Old, m.Now)).Where(m => state.Pools.Any(p => p.Id == m.Old))];
            pools.AddRange(moved.Select(m => new ArrivedPool(m.Now, Operation(state, m.Old))));
            if (moved.Length > 0) incidents.AddRange(state.Incidents.Values.Where(i => i.ClosesThePool).Select(i => Of(i, moved, circuit)));
        }

        var instruments = IsNew(before, next, circuit) ? Shared(before, known) : [];
        return pools.Count == 0 && instruments.IsEmpty ? Nothing : new(pools.ToImmutable(), incidents.ToImmutable()) { Instruments = instruments };
    }

    // Each verification was told to every circuit that was there; one of them may have missed it.
    private static ImmutableArray<InstrumentState> Shared(PlantPlan before, Func<string, CircuitState?> known) =>
    [
        .. before.Circuits.Select(c => known(c.Id)).OfType<CircuitState>().SelectMany(s => s.Instruments).Where(i => !i.Made.IsEmpty).GroupBy(i => i.Id)
            .Select(g => new InstrumentState(g.Key, [.. g.SelectMany(i => i.Made).DistinctBy(m => m.Id).OrderBy(m => m.VerifiedAt)])),
    ];

    private static bool IsNew(PlantPlan before, PlantPlan next, string circuit) =>
        next.Circuits.FirstOrDefault(c => c.Id == circuit) is { } to && before.Circuits.All(from => from.Id != circuit && !IsRenamed(from, to, next));

    // Its alarms and its breaches stay behind with the water they speak of; that bathers were in danger there must not stay behind with them.
    private static PoolOperation Operation(CircuitState state, string pool)
    {
        var operation = state.Pools.First(p => p.Id == pool).Operation;
        var inDanger = GateAlarms.AnyCritical(state.Plan, state.Alarms.Values, pool) || state.Exceptions.Any(line => line.PoolId == pool && line.Grade >= BreachGrade.Closure);
        return operation.MayBatheIn && inDanger
            ? operation with { State = OperatingState.Closed, Since = state.Watermark, ForCause = true, TestsFrom = state.Watermark }
            : operation;
    }

    // It goes on where it was too, when pools are left there: so it has an id of its own here, the same however often it is worked out.
    private static Incident Of(Incident incident, (string Old, string Now)[] moved, string circuit)
    {
        var home = moved.Any(m => m.Old == incident.PoolId) ? moved.First(m => m.Old == incident.PoolId).Now : moved[0].Now;
        return incident with
        {
            Id = TimeOrderedId.Derive(incident.DeclaredAt, $"{incident.Id} in {circuit}"), PoolId = home,
            Tests = [.. incident.Tests.SelectMany(t => moved.Where(m => m.Old == (t.PoolId ?? incident.PoolId)).Select(m => t with { PoolId = m.Now == home ? null : m.Now }))],
        };
    }

    private static List<(string From, string Old, string Now)> Moved(PlantPlan before, PlantPlan next, string circuit)
    {
        var moved = new List<(string From, string Old, string Now)>();
        var to = next.Circuits.FirstOrDefault(c => c.Id == circuit);
        foreach (var (old, now) in PlanLineage.Pair([.. before.Circuits.SelectMany(c => c.Pools)], [.. next.Circuits.SelectMany(c => c.Pools)], p => p.Id, p => p.Was))
        {
            if (old is null || now is null || to is null || to.Pools.All(p => p.Id != now.Id)) continue;
            var from = before.Circuits.First(c => c.Pools.Any(p => p.Id == old.Id));
            if (from.Id != to.Id && !IsRenamed(from, to, next)) moved.Add((from.Id, old.Id, now.Id));
        }

        return moved;
    }

    // A circuit under another id is the same circuit, and took its state along.
    private static bool IsRenamed(CircuitPlan from, CircuitPlan to, PlantPlan next) => to.Was == from.Id && next.Circuits.All(c => c.Id != from.Id);
}
