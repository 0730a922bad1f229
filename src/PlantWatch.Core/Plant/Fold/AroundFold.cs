using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What is so around the subject of an alarm: flow, work and how its pool is run. The policy of <see cref="Suppression"/> makes the rest of it.</summary>
internal static class AroundFold
{
    public static Surroundings Of(Draft draft, string subject)
    {
        var probe = draft.Index.Probe(subject);
        var pool = PoolOf(draft, probe, subject);
        var now = OfProbe(draft, probe) | OfPools(draft, pool) | (BackwashFold.Silences(draft, draft.Watermark) ? SuppressedWhile.Backwash : 0);
        return new(now, pool < 0 ? draft.Plan.Name : draft.Plan.Pools[pool].Name, probe < 0 ? "" : draft.Plan.Probes[probe].Name);
    }

    /// <summary>The subject is a thing of the plan: a pool, a probe, a pump, a filter, a reagent, a product, a test of a pool, or the circuit itself.</summary>
    public static bool IsHere(Draft draft, string subject) =>
        subject == draft.Plan.Id || draft.Index.Probe(subject) >= 0 || draft.Index.Pump(subject) >= 0 || FilterFold.IndexOf(draft, subject) >= 0 || ReagentFold.IndexOf(draft, subject) >= 0 || StockFold.ProductOf(draft.Plan, subject) is not null
        || draft.Index.Pool(Head(subject)) >= 0
        || draft.Plan.Telling.Channels.Any(channel => channel.Id == subject);

    private static SuppressedWhile OfProbe(Draft draft, int probe)
    {
        if (probe < 0) return SuppressedWhile.Never;
        return (FlowFold.Of(draft, probe) == false ? SuppressedWhile.NoSampleFlow : 0) | (draft.Probes[probe].Work.Holds(draft.Watermark) ? SuppressedWhile.ProbeWork : 0);
    }

    // What all pools share is as the one of them that is used most: while any holds water the common return is watched.
    private static SuppressedWhile OfPools(Draft draft, int pool)
    {
        if (pool >= 0) return OfState(draft.Pools[pool].Operation);
        if (draft.Pools.Length == 0) return SuppressedWhile.Never;
        var all = SuppressedWhile.Drained | SuppressedWhile.NotOpen;
        foreach (var one in draft.Pools) all &= OfState(one.Operation);
        return all;
    }

    private static SuppressedWhile OfState(PoolOperation operation) => operation.State switch
    {
        OperatingState.Drained => SuppressedWhile.Drained | SuppressedWhile.NotOpen,
        _ => operation.MayBatheIn ? SuppressedWhile.Never : SuppressedWhile.NotOpen,
    };

    private static int PoolOf(Draft draft, int probe, string subject)
    {
        if (probe >= 0) return draft.Index.Pool(draft.Plan.Probes[probe].PoolId);
        var pump = draft.Index.Pump(subject);
        return draft.Index.Pool(pump >= 0 ? draft.Plan.Pumps[pump].PoolId : Head(subject));
    }

    private static string Head(string subject) => subject.IndexOf('/', StringComparison.Ordinal) is > 0 and var slash ? subject[..slash] : subject;
}
