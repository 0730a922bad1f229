using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>What the plan of an open incident asks of the chlorine in a pool. Only for it may chlorine go past what always holds, and only in water that nobody may bathe in.</summary>
/// <param name="Incident">The incident.</param>
/// <param name="Figure">The row of its plan that the pool is held by; null when there is none.</param>
/// <param name="Refusal">Why there is none.</param>
/// <param name="MayBatheIn">Names of pools of the water that are not closed; empty when all are.</param>
public sealed record IncidentHold(Incident Incident, HoldFigure? Figure, Reason? Refusal, ImmutableArray<string> MayBatheIn)
{
    /// <summary>Most free chlorine in mg/L that a dose is worked out for, whatever a plan names: 20 mg/L is the highest that plans in use state for water with little or no cyanurate (Quebec, Q-2, r. 39, s. 18, for 8 h; CDC's contact time at 20 mg/L, 12.75 h; published).</summary>
    public const double MostChlorine = 20;

    /// <summary>Residual in mg/L that the plan wants through the pool before its clock starts; null without a row.</summary>
    public double? StartAt => Figure?.StartAt;

    /// <summary>Highest residual in mg/L that the plan names, and that a dose is worked out for; null without a row.</summary>
    public double? Highest => Figure is { } figure ? Math.Min(MostChlorine, figure.Levels.Select(l => l.MilligramsPerLitre).Append(figure.StartAt).Max()) : null;

    /// <summary>The hold of a pool; null when no incident is open in its water. Of several the one that asks for most: none is merged with another.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="pools">What is known of its pools, in its order.</param>
    /// <param name="incidents">Its open incidents.</param>
    /// <param name="pool">The pool.</param>
    public static IncidentHold? Of(CircuitPlan plan, ImmutableArray<PoolState> pools, IEnumerable<Incident> incidents, string pool)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(incidents);
        var at = plan.Pools.Select(p => p.Id).ToList().IndexOf(pool);
        if (at < 0) return null;
        ImmutableArray<string> open = [.. plan.Pools.Zip(pools).Where(p => p.Second.Operation.MayBatheIn).Select(p => p.First.Name)];
        return incidents.Where(i => i.ClosesThePool).OrderBy(i => i.DeclaredAt).ThenBy(i => i.Id)
            .Select(i => (Incident: i, Choice: IncidentEvidence.Choice(i, plan.Pools[at], pools[at])))
            .Select(c => new IncidentHold(c.Incident, c.Choice.Figure, c.Choice.Refusal, open)).OrderByDescending(h => h.Highest ?? 0).FirstOrDefault();
    }
}
