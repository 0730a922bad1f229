using System.Collections.Immutable;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Plant;

/// <summary>Who is who in two versions of a plan: the same id, or else the id that the new one says it had before.</summary>
internal sealed class PlanLineage(CircuitPlan old, CircuitPlan next)
{
    /// <summary>Pools, those of the new plan first and in its order, then the removed ones.</summary>
    public ImmutableArray<(PoolPlan? Old, PoolPlan? Next)> Pools { get; } = Pair(old.Pools, next.Pools, pool => pool.Id, pool => pool.Was);

    /// <summary>Probes, likewise.</summary>
    public ImmutableArray<(ProbePlan? Old, ProbePlan? Next)> Probes { get; } = Pair(old.Probes, next.Probes, probe => probe.Id, probe => probe.Was);

    /// <summary>Pumps, likewise.</summary>
    public ImmutableArray<(PumpPlan? Old, PumpPlan? Next)> Pumps { get; } = Pair(old.Pumps, next.Pumps, pump => pump.Id, pump => pump.Was);

    /// <summary>The id that an old pool has now; null when there was none. One that is gone keeps its old id, which is no longer anybody's.</summary>
    public string? PoolNow(string? oldId) => oldId is null ? null : Pools.FirstOrDefault(pair => pair.Old?.Id == oldId).Next?.Id ?? oldId;

    /// <summary>The id that an old probe has now, likewise.</summary>
    public string? ProbeNow(string? oldId) => oldId is null ? null : Probes.FirstOrDefault(pair => pair.Old?.Id == oldId).Next?.Id ?? oldId;

    /// <summary>Pairs two versions of a list. An id that stands in both is itself, whatever a former id says; each old one is claimed once.</summary>
    public static ImmutableArray<(T? Old, T? Next)> Pair<T>(ImmutableArray<T> old, ImmutableArray<T> next, Func<T, string> id, Func<T, string?> was) where T : class
    {
        var free = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var item in old) free.TryAdd(id(item), item);
        var same = next.Select(item => free.Remove(id(item), out var found) ? found : null).ToArray();
        var pairs = ImmutableArray.CreateBuilder<(T?, T?)>();
        for (var i = 0; i < next.Length; i++)
            pairs.Add((same[i] ?? (was(next[i]) is { } former && free.Remove(former, out var found) ? found : null), next[i]));

        foreach (var item in old)
            if (free.ContainsKey(id(item))) pairs.Add((item, null));
        return pairs.ToImmutable();
    }
}
