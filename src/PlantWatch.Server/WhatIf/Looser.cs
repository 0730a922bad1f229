using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Server.WhatIf;

/// <summary>What a changed limit may not be: looser than a confirmed row of the pack without somebody who stands for it, looser than a closure limit, beyond a stop that always holds.</summary>
internal static class Looser
{
    /// <summary>The objections to a change; none when it may be.</summary>
    /// <param name="change">The change.</param>
    /// <param name="state">The circuit as it stands.</param>
    public static IEnumerable<FieldRemark> Objections(LimitChange change, CircuitState state)
    {
        var index = state.Plan.Pools.ToList().FindIndex(p => p.Id == change.Pool);
        if (index < 0) return [];
        var pack = LimitsMaker.Of(state.Plan, state.Plan.Pools[index] with { Limits = [] }, state.Confirmations, state.Pools[index].Water);
        return Ends(change, state.Plan, pack).OfType<FieldRemark>();
    }

    private static IEnumerable<FieldRemark?> Ends(LimitChange change, CircuitPlan plan, LimitsInForce pack)
    {
        var quantity = change.Measurand.Limiting();
        var (closure, operating) = (pack.Find(quantity, RowGrade.Closure), pack.Find(quantity, RowGrade.Operating));
        var stands = change.Limit.LoosenedBy is not null;
        foreach (var (field, value, isLow) in new[] { ("low", change.Limit.Low, true), ("high", change.Limit.High, false) })
        {
            if (value is not { } end) continue;
            if (Stops.TryOf(plan, change.Measurand, out var stop, out _) && IsBeyond(end, isLow ? stop.Low : stop.High, isLow)) yield return new(field, Reason.Of("what_if.beyond_stop", stop.Low, stop.High));
            else if (IsBeyond(end, isLow ? closure?.Low : closure?.High, isLow)) yield return new(field, Reason.Of("what_if.beyond_closure", (isLow ? closure!.Low : closure!.High)!.Value, isLow ? closure.LowFrom : closure.HighFrom));
            else if (!stands && IsBeyond(end, isLow ? operating?.Low : operating?.High, isLow)) yield return new(field, Reason.Of("what_if.looser_than_row", (isLow ? operating!.Low : operating!.High)!.Value, isLow ? operating.LowFrom : operating.HighFrom));
        }
    }

    private static bool IsBeyond(double end, double? limit, bool isLow) => isLow ? end < limit : end > limit;
}
