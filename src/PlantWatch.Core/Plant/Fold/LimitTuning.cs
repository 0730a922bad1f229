using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>How the operating limits of one probe are watched: the rules' own deadband and delays, or the pool's where the plant has set them. Stops and closure limits are never tuned.</summary>
internal sealed record LimitTuning(Rule Below, Rule Above, double Deadband)
{
    public static LimitTuning Of(CircuitPlan plan, ProbePlan probe)
    {
        var own = plan.Pools.FirstOrDefault(p => p.Id == probe.PoolId)?.Limits.FirstOrDefault(l => l.Measurand == probe.Measurand);
        return new(Tuned(RuleBook.BelowLimit, own), Tuned(RuleBook.AboveLimit, own), own?.Deadband ?? Rules.Deadband.Of(probe.Measurand));
    }

    private static Rule Tuned(Rule rule, LimitPlan? own) =>
        own is { OnDelay: null, OffDelay: null } or null ? rule : rule with { OnDelay = own.OnDelay ?? rule.OnDelay, OffDelay = own.OffDelay ?? rule.OffDelay };
}
