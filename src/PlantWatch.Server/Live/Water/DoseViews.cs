using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Doses as the page shows them, amounts in the units of the plant.</summary>
internal sealed class DoseViews(Wording words, UnitSystem units)
{
    private readonly AmountWords _amounts = new(units, words.Language);

    public DoseAdviceView Of(DoseAdvice advice, DoseSituation at) => new(
        at.Now, Product(advice.Product, at), advice.Target, advice.From, advice.Value, words.Say(advice.Refused), _amounts.Water(advice.Volume.Whole), _amounts.Water(advice.Volume.First),
        advice.Dose is { } dose ? Of(dose, advice.Product, at.Pool.Disinfectant) : null, words.Say(advice.Says), words.Say(advice.How), words.Say(advice.Equipment), words.Say(advice.Precautions), advice.RetestHours);

    private DoseView Of(SingleDose dose, ProductAtHand product, Disinfectant disinfectant) => new(
        _amounts.Mass(dose.Kilograms), Litres(product, dose.Kilograms), _amounts.Mass(dose.FirstKilograms), Litres(product, dose.FirstKilograms),
        dose.FirstKilograms >= dose.Kilograms * 0.999, 200 * dose.RelativeUncertainty, product.CostPerKilogram * dose.FirstKilograms, words.Say(dose.Because),
        Figures(dose.Predicted?.Before, disinfectant), Figures(dose.Predicted?.AtOnce, disinfectant), Figures(dose.Predicted?.Spent, disinfectant), words.Say(dose.SideEffects));

    private Amount? Litres(ProductAtHand product, double kilograms) => product.IsLiquid ? _amounts.Volume(kilograms / product.KilogramsPerLitre!.Value) : null;

    public static DoseFigures? Figures(Speciation? water, Disinfectant disinfectant) => water is null ? null : new(
        water.Ph, double.IsFinite(water.SaturationIndex) ? water.SaturationIndex : null, water.FreeChlorine,
        ChlorineSplit.Of(water, disinfectant) is { IsKnown: true } split ? split.Value.MilligramsPerLitre : null, water.TotalAlkalinity, water.CalciumHardness,
        water.Cyanurate, water.DissolvedSolids);

    public DoseProductView Product(ProductAtHand product, DoseSituation at) => new(
        product.Plan.Id, product.Plan.Name, product.Plan.Kind, 100 * product.Strength.Fraction, product.Facts.Basis == GradeBasis.AvailableChlorine, product.Strength.AgeDays,
        product.IsLiquid ? product.KilogramsPerLitre : null, product.Plan.AddedBy == DosingWay.Pump, product.IsModelled ? words.Say(product.Strength.Says) : [],
        words.Say(ProductFitness.Against(product.Plan, at.Pool)), [.. ProductUse.Of(product.Plan.Kind).Select(target => Target(product.Plan.Kind, target, at))]);

    private static DoseTargetView Target(ProductKind kind, Core.Quantities.Measurand target, DoseSituation at) => new(
        target, ProductUse.Direction(kind, target), at.Tested(target), at.Tests.TryGetValue(target, out var test) ? test.SampledAt : null, at.Limit(target)?.Low, at.Limit(target)?.High);

    public GivenDoseView Of(DoseEntry entry, bool corrected, IEnumerable<DoseResponse> responses) => new(
        entry.Dose, _amounts.Mass(entry.Dose.Kilograms), entry.ArrivedAt, corrected,
        [.. responses.Select(r => new DoseResponseView(r.CheckId, r.SampledAt, [.. r.Figures.Select(f =>
            new FigureResponseView(f.Measurand, f.Predicted, f.Measured, 2 * f.Uncertainty, f.Word, words.Text(f.Saying())))]))]);
}
