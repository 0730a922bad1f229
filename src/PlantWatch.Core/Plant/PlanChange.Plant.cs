using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    /// <summary>
    /// What a new plant file does to the whole plant. Beside the effects within each circuit it knows what no circuit can: circuits that come, go,
    /// are joined or split, and things that move from one to another, where what was learned starts anew and history before stays where it was.
    /// </summary>
    public static ImmutableArray<Reason> Between(PlantPlan old, PlantPlan next)
    {
        var effects = ImmutableArray.CreateBuilder<Reason>();
        Setting("site", "name", old.Site.Name, next.Site.Name, effects);
        Setting("site", "language", old.Site.Language, next.Site.Language, effects);
        Products(old, next, effects);
        var circuits = PlanLineage.Pair(old.Circuits, next.Circuits, circuit => circuit.Id, circuit => circuit.Was);
        var moves = PlanMoves.Between(old, next, circuits);
        moves.State(effects);
        foreach (var pair in circuits) Circuit(pair, moves, effects);
        return effects.ToImmutable();
    }

    /// <summary>Of what a new plant file does, that which goes across a circuit's border: joined, split, moved.</summary>
    public static ImmutableArray<Reason> MovesOf(PlantPlan old, PlantPlan next, string circuit)
    {
        var effects = ImmutableArray.CreateBuilder<Reason>();
        PlanMoves.Between(old, next, PlanLineage.Pair(old.Circuits, next.Circuits, c => c.Id, c => c.Was)).State(effects);
        return [.. effects.Where(effect => effect.Facts.Any(fact => fact.Text == circuit))];
    }

    private static void Circuit((CircuitPlan? Old, CircuitPlan? Next) pair, PlanMoves moves, ImmutableArray<Reason>.Builder effects)
    {
        switch (pair)
        {
            case (null, { } added):
                effects.Add(Reason.Of("plan.circuit_added", added.Id, added.Name));
                break;
            case ({ } removed, null):
                effects.Add(Reason.Of("plan.circuit_removed", removed.Id, removed.Name));
                break;
            case ({ } old, { } next):
                // What moved is said once, as a move, and not as a loss here and a gain there.
                // Products are said one by one for the whole plant.
                effects.AddRange(Between(old, next).Effects.Where(effect => effect.Code != ProductsChanged && !moves.Covers(effect)));
                break;
        }
    }

    private static void Products(PlantPlan old, PlantPlan next, ImmutableArray<Reason>.Builder effects)
    {
        foreach (var (before, now) in PlanLineage.Pair(old.Products, next.Products, product => product.Id, _ => null))
            if (before is null) effects.Add(Reason.Of("plan.product_added", now!.Id, now.Name));
            else if (now is null) effects.Add(Reason.Of("plan.product_removed", before.Id, before.Name));
            else if (before != now) effects.Add(Reason.Of("plan.product_changed", now.Id, now.Name));
    }
}
