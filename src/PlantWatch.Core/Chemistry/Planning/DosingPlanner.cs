using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Plans the doses from a tested water to inside every band: least cost, safe steps, in order.</summary>
/// <remarks>Pure: the same question gives the same plan. What it returns is advice for a licensed or trained person, under local codes and product labels.</remarks>
public static class DosingPlanner
{
    /// <summary>Works a plan out.</summary>
    /// <param name="question">The water, the bands and what is at hand.</param>
    public static DosingPlan Of(PlanQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (new InputCheck().Within("volume", question.CubicMetres, Turnover.ValidCubicMetres, "m3").Why is { } volume) return new() { Outcome = PlanOutcome.ImpossibleWater, Says = [volume] };
        if (question.Bands.Where(b => b.IsContradictory).ToArray() is { Length: > 0 } crossed)
            return new() { Outcome = PlanOutcome.ContradictoryBands, Says = [.. crossed.Select(b => Reason.Of("plan.band_crossed", b.Figure.Key(), b.Low!.Value, b.High!.Value))] };
        if (question.Water.Speciate() is not { } speciated)
        {
            Aim[] untested = [.. question.Bands.Select(b => Aim.Of(b, null))];
            return new() { Outcome = PlanOutcome.Missing, Says = [.. PlanReasons.Missing(question.Water, []), Reason.Of("plan.still_possible")], Aims = [.. untested] };
        }

        return speciated.IsKnown
            ? Planned(question, speciated.Value)
            : new() { Outcome = PlanOutcome.ImpossibleWater, Says = [speciated.Saying()!] };
    }

    private static DosingPlan Planned(PlanQuestion question, Speciation now)
    {
        Aim[] aims = [.. question.Bands.Select(b => Aim.Of(b, question.Water.Of(b.Figure, now)))];
        var says = PlanReasons.Missing(question.Water, aims).Concat(PlanReasons.InDoubt(aims)).ToImmutableArray();
        var plain = new DosingPlan { Outcome = PlanOutcome.NothingToDo, Aims = [.. aims], Now = now, Says = says };
        if (BandConflict.Between(aims, now) is { } conflict) return plain with { Outcome = PlanOutcome.ContradictoryBands, Says = [conflict, .. says] };
        return aims.Any(a => a.AsksForDose) ? new PlanMaker(question, plain).Make() : plain;
    }
}
