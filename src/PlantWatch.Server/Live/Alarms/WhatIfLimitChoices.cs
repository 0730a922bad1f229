using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What can be limited in the pools, and how it is limited now.</summary>
internal static class WhatIfLimitChoices
{
    public static IEnumerable<WhatIfLimitsPool> Of(CircuitState state, Wording words) =>
        state.Plan.Pools.Zip(state.Pools).Select(p => new WhatIfLimitsPool(p.First.Id, p.First.Name, [.. Quantities(state.Plan, p.First, p.Second).Select(m => Quantity(state.Plan, p.First, p.Second, m, words))]));

    // What nobody measures there can be limited in the plant file, and nothing would come of it here.
    private static IEnumerable<Measurand> Quantities(CircuitPlan plan, PoolPlan pool, PoolState state) => Enum.GetValues<Measurand>()
        .Where(m => m.Limiting() != PackQuantity.Sentence)
        .Where(m => HasProbe(plan, pool, m) || pool.Limits.Any(l => l.Measurand == m) || state.Manual.ContainsKey(m) || state.Limits.Find(m.Limiting(), RowGrade.Operating) is not null);

    private static WhatIfLimitsQuantity Quantity(CircuitPlan plan, PoolPlan pool, PoolState state, Measurand measurand, Wording words)
    {
        var (bound, own) = (state.Limits.Find(measurand.Limiting(), RowGrade.Operating), pool.Limits.FirstOrDefault(l => l.Measurand == measurand));
        return new(
            measurand, words.Find($"quantity.{measurand.Limiting().Key()}"), LimitViews.Unit(measurand.Limiting()), HasProbe(plan, pool, measurand),
            bound?.Low, bound?.LowFrom ?? "", bound?.High, bound?.HighFrom ?? "", own?.Low, own?.High, Stops.TryOf(plan, measurand, out var stop, out _) ? stop : null,
            Deadband.Of(measurand), SmallWater.Delay(RuleBook.AboveLimit.OnDelay, pool.VolumeCubicMetres).TotalSeconds, SmallWater.Delay(RuleBook.AboveLimit.OffDelay, pool.VolumeCubicMetres).TotalSeconds,
            own?.Deadband, own?.OnDelay?.TotalSeconds, own?.OffDelay?.TotalSeconds, own?.Source);
    }

    private static bool HasProbe(CircuitPlan plan, PoolPlan pool, Measurand measurand) => plan.Probes.Any(p => p.PoolId == pool.Id && p.Measurand == measurand);
}
