using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>A water as it is planned from, and which of its figures a person has just stated in place of a test.</summary>
/// <param name="Water">The water.</param>
/// <param name="Stated">Figures stated just now: no test of theirs can be stale.</param>
/// <param name="Fill">The fill water; null when not known.</param>
public sealed record PlanBasis(TestedWater Water, ImmutableHashSet<Measurand> Stated, Water? Fill);

/// <summary>Puts what stands against any dose in front of a plan: volume, tests, bathers, products. Doubt never makes safe.</summary>
public static class PlanAdvisor
{
    private static readonly Measurand[] RestsOn =
        [Measurand.Ph, Measurand.FreeChlorine, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids];

    /// <summary>Advises a plan.</summary>
    /// <param name="at">What a dose is judged by.</param>
    /// <param name="basis">The water it starts from.</param>
    /// <param name="today">Today on the site's calendar.</param>
    /// <param name="wish">What counts beside safety.</param>
    public static PlanAdvice Of(DoseSituation at, PlanBasis basis, DateOnly today, PlanWish wish = PlanWish.FewerGoes)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(basis);
        var judged = at.Products.Select(p => new LeftOut(ProductAtHand.Of(p, today), ProductFitness.Against(p, at.Pool))).ToArray();
        ImmutableArray<ProductAtHand> fit = [.. judged.Where(j => j.Because.IsEmpty).Select(j => j.Product)];
        var plan = DosingPlanner.Of(new()
        {
            Water = basis.Water, CubicMetres = DoseVolume.WholeOf(at.Circuit), PoolCubicMetres = at.Pool.VolumeCubicMetres, Bands = UsualBands.Of(at.Pool), Products = fit, TurnoverHours = at.Circuit.TurnoverHours, Fill = basis.Fill, Wish = wish,
        });
        var refused = Refusals(at, basis, plan);
        return new()
        {
            Refused = refused, CubicMetres = DoseVolume.WholeOf(at.Circuit), RetestHours = (at.Circuit.TurnoverHours is { } hours ? MixingTime.ToRetest(hours).OrNull : null) ?? DoseAdvisor.UsualRetestHours,
            Plan = refused.IsEmpty ? plan : Withheld(plan),
            LeftOut = [.. judged.Where(j => !j.Because.IsEmpty)], Says = [.. Says(at, plan)],
        };
    }

    // What is missing or in doubt is still said; what the steps would have come to is not.
    private static DosingPlan Withheld(DosingPlan plan) => plan with
    {
        Outcome = PlanOutcome.Refused, Steps = [], Dilution = null, Cost = null, End = null, IsOnlyTheStart = false,
        Says = plan.Says.RemoveAll(s => s.Code is not ("plan.missing_for_all" or "plan.still_possible" or "plan.not_tested" or "plan.no_index" or "plan.within_uncertainty")),
    };

    private static ImmutableArray<Reason> Refusals(DoseSituation at, PlanBasis basis, DosingPlan plan)
    {
        var against = ImmutableArray.CreateBuilder<Reason>();
        if (at.Entitlement != Entitlement.Granted) against.Add(Reason.Of("dose.not_entitled"));
        against.AddRange(DoseVolume.Unconfirmed(at.Circuit));
        // What was never tested is left out of the plan, and that is said there.
        foreach (var measurand in RestsOn.Where(m => !basis.Stated.Contains(m) && at.Tests.ContainsKey(m))) DoseRefusals.Test(at, measurand, against);
        if (plan.Steps.Any(s => s.Product is { Plan.AddedBy: not DosingWay.Pump })) Bathers(at, against);
        return against.ToImmutable();
    }

    private static void Bathers(DoseSituation at, ImmutableArray<Reason>.Builder against)
    {
        if (at.BathersOut == true) return;
        against.Add(at.BathersOut == false || at.Bathers > 0 ? Reason.Of("dose.bathers_in") : Reason.Of("dose.bathers_not_known"));
    }

    private static List<Reason> Says(DoseSituation at, DosingPlan plan)
    {
        var all = new List<Reason>();
        if (DoseRefusals.CombinedIsHigh(at)) all.Add(Reason.Of("plan.combined_high", at.Combined!.Value));
        if (at.Pool.Disinfectant == Disinfectant.Bromine) all.Add(Reason.Of("plan.bromine"));
        // Inside its band is not the same as disinfecting: most of it is held back.
        if (plan.Now is { Cyanurate: > 0 } now && ChlorineSplit.Of(now, at.Pool.Disinfectant) is { IsKnown: true } split && now.FreeChlorine > 0)
            all.Add(Reason.Of("plan.held_back", now.FreeChlorine, split.Value.MilligramsPerLitre));
        if (at.Circuit.TurnoverHours is null) all.Add(Reason.Of("plan.turnover_not_known", DoseAdvisor.UsualRetestHours));
        return all;
    }
}
