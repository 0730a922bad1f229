using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>What went from one circuit to another with a new plant file.</summary>
internal sealed class PlanMoves
{
    private readonly List<Reason> _effects = [];
    private readonly HashSet<string> _left = new(StringComparer.Ordinal);
    private readonly HashSet<string> _came = new(StringComparer.Ordinal);

    public static PlanMoves Between(PlantPlan old, PlantPlan next, ImmutableArray<(CircuitPlan? Old, CircuitPlan? Next)> circuits)
    {
        var moves = new PlanMoves();
        var pools = Trace(old, next, circuit => circuit.Pools, pool => pool.Id, pool => pool.Was);
        moves.JoinedAndSplit(pools);
        moves.Add("plan.pool_moved", pools, circuits);
        moves.Add("plan.probe_moved", Trace(old, next, circuit => circuit.Probes, probe => probe.Id, probe => probe.Was), circuits);
        moves.Add("plan.pump_moved", Trace(old, next, circuit => circuit.Pumps, pump => pump.Id, pump => pump.Was), circuits);
        return moves;
    }

    public void State(ImmutableArray<Reason>.Builder builder) => builder.AddRange(_effects);

    /// <summary>True for the loss or the gain that a circuit would state of something that moved.</summary>
    public bool Covers(Reason effect) => effect.Code switch
    {
        "plan.pool_removed" or "plan.probe_removed" or "plan.pump_removed" => _left.Contains(effect.Facts[0].Text!),
        "plan.pool_added" or "plan.probe_added" or "plan.pump_added" => _came.Contains(effect.Facts[0].Text!),
        _ => false,
    };

    private void Add(string code, List<Trail> trails, ImmutableArray<(CircuitPlan? Old, CircuitPlan? Next)> circuits)
    {
        foreach (var trail in trails)
        {
            if (circuits.Any(pair => pair.Old?.Id == trail.From && pair.Next?.Id == trail.To)) continue;
            _effects.Add(Reason.Of(code, trail.Id, trail.From, trail.To));
            _left.Add(trail.OldId);
            _came.Add(trail.Id);
        }
    }

    private void JoinedAndSplit(List<Trail> pools)
    {
        foreach (var into in pools.GroupBy(trail => trail.To))
            if (into.Select(trail => trail.From).Distinct().ToArray() is { Length: > 1 } from)
                _effects.Add(new Reason("plan.circuits_joined", [into.Key, .. from]));
        foreach (var from in pools.GroupBy(trail => trail.From))
            if (from.Select(trail => trail.To).Distinct().ToArray() is { Length: > 1 } into)
                _effects.Add(new Reason("plan.circuit_split", [from.Key, .. into]));
    }

    private static List<Trail> Trace<T>(PlantPlan old, PlantPlan next, Func<CircuitPlan, ImmutableArray<T>> list, Func<T, string> id, Func<T, string?> was) where T : class
    {
        var from = Owners(old, list, id);
        var to = Owners(next, list, id);
        var pairs = PlanLineage.Pair([.. old.Circuits.SelectMany(circuit => list(circuit))], [.. next.Circuits.SelectMany(circuit => list(circuit))], id, was);
        return [.. pairs.Where(pair => pair is (not null, not null)).Select(pair => new Trail(id(pair.Old!), id(pair.Next!), from[id(pair.Old!)], to[id(pair.Next!)]))];
    }

    private static Dictionary<string, string> Owners<T>(PlantPlan plan, Func<CircuitPlan, ImmutableArray<T>> list, Func<T, string> id)
    {
        var owners = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var circuit in plan.Circuits)
            foreach (var item in list(circuit)) owners.TryAdd(id(item), circuit.Id);
        return owners;
    }

    private sealed record Trail(string OldId, string Id, string From, string To);
}
