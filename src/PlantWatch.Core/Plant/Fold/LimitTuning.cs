using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>How the operating limits of one probe are watched: the rules' own deadband and delays, shorter on little water, or the pool's where the plant has set them. Stops and closure limits are never tuned.</summary>
internal sealed record LimitTuning(Rule Below, Rule Above, double Deadband)
{
    public static LimitTuning Of(CircuitPlan plan, ProbePlan probe)
    {
        var pool = plan.Pools.FirstOrDefault(p => p.Id == probe.PoolId);
        var (own, volume) = (pool?.Limits.FirstOrDefault(l => l.Measurand == probe.Measurand), pool?.VolumeCubicMetres ?? 0);
        return new(Tuned(RuleBook.BelowLimit, own, volume), Tuned(RuleBook.AboveLimit, own, volume), own?.Deadband ?? Rules.Deadband.Of(probe.Measurand));
    }

    private static Rule Tuned(Rule rule, LimitPlan? own, double volume) => rule with
    {
        OnDelay = own?.OnDelay ?? SmallWater.Delay(rule.OnDelay, volume), OffDelay = own?.OffDelay ?? SmallWater.Delay(rule.OffDelay, volume),
    };
}
