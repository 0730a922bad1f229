using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>A dosing plan as the page shows it, amounts in the units of the plant.</summary>
internal sealed class PlanViews(Wording words, UnitSystem units)
{
    private readonly AmountWords _amounts = new(units, words.Language);
    private readonly DoseViews _doses = new(words, units);

    public DosingPlanView Of(PlanAdvice advice, DoseSituation at, IReadOnlyList<BalanceInput> inputs)
    {
        var plan = advice.Plan;
        var mass = plan.Steps.Sum(s => s.Kilograms);
        return new(
            at.Now, plan.Outcome, words.Find($"plan.outcome_{Wording.Key(plan.Outcome)}"), words.Say(advice.Refused),
            [.. plan.Aims.Select(a => Figure(a, plan))], inputs, _amounts.Water(advice.CubicMetres), plan.Dilution is { } dilution ? Of(dilution, at.Pool.Disinfectant) : null,
            [.. plan.Steps.Select(s => Of(s, at, advice))], plan.CostIsMass ? null : plan.Cost, mass > 0 ? _amounts.Mass(mass) : null, words.Say(advice.Says.Concat(plan.Says)),
            [.. advice.LeftOut.Select(l => new PlanLeftOutView(l.Product.Plan.Name, words.Say(l.Because)))],
            words.Say([Reason.Of("plan.advice_only"), Reason.Of("plan.retest_between"), Reason.Of("plan.one_at_a_time")]));
    }

    private static PlanFigureView Figure(Aim aim, DosingPlan plan)
    {
        var then = plan.End is { } end && !plan.IsOnlyTheStart ? PlannedFigures.Of(end, aim.Figure) : (double?)null;
        return new(
            aim.Figure, aim.Now?.Value, aim.Now?.U, aim.Band.Low, aim.Band.High, aim.Band.LowSource, aim.Band.HighSource, aim.Standing,
            aim.Now is not null && then is { } value && double.IsFinite(value) ? value : null);
    }

    private PlanDilutionView Of(Dilution dilution, Disinfectant disinfectant) => new(
        100 * dilution.Part, _amounts.Water(dilution.CubicMetres), _amounts.Water(dilution.OverflowCubicMetres), dilution.Drains, DoseViews.Figures(dilution.After, disinfectant));

    private PlanStepView Of(PlanStep step, DoseSituation at, PlanAdvice advice)
    {
        var product = step.Product;
        return new(
            step.Kind, product is null ? null : _doses.Product(product, at), product is null ? null : _amounts.Mass(step.Kilograms),
            product is { IsLiquid: true } ? _amounts.Volume(step.Kilograms / product.KilogramsPerLitre!.Value) : null, step.Part, step.Parts, DoseViews.Figures(step.Before, at.Pool.Disinfectant)!,
            DoseViews.Figures(step.After, at.Pool.Disinfectant)!, step.Kind == MeansKind.Dose ? step.WaitHours ?? advice.RetestHours : null, words.Say(step.Says),
            product is null ? [] : words.Say(ProductHazards.Equipment(product.Plan.Kind)),
            product is null ? [] : words.Say(ProductHazards.Handling(product.Plan.Kind).Concat(Apart(product, advice))));
    }

    // Of the products of this plan: what is named beyond them is noise at the poolside.
    private static IEnumerable<Reason> Apart(ProductAtHand product, PlanAdvice advice) =>
        advice.Plan.Steps.Select(s => s.Product?.Plan).OfType<ProductPlan>().Distinct().Where(p => p.Id != product.Plan.Id).Select(p => ProductHazards.Apart(product.Plan.Kind, p)).OfType<Reason>().Distinct();
}
