using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Planning;

/// <summary>Plans as text, read by a person of the trade: what is given, in which order, and the water after each step.</summary>
public sealed class PlanExamples
{
    private static readonly Water Tap = new(Ph.From(7.6), Celsius.From(15), Alkalinity.From(120), CalciumHardness.From(150), DissolvedSolids.From(350));

    private static string Plan(PlanQuestion question) => PlanText.Of(DosingPlanner.Of(question));

    public static TheoryData<string, PlanQuestion> Stories => new()
    {
        { "soft_and_sharp", Shelf.Ask(Shelf.Water(7.9, 28, 60, 150, 800, 0.4)) },
        { "soft_and_sour", Shelf.Ask(Shelf.Water(6.9, 28, 60, 150, 800, 0.4)) },
        { "too_much_alkalinity", Shelf.Ask(Shelf.Water(7.5, 28, 150, 250, 800, 1.4)) },
        { "tests_of_a_photometer", Shelf.Ask(Shelf.Water(7.9, 28, 100, 250, 800, 0.4, times: 1)) },
        { "too_hard_with_tap_water_known", Shelf.Ask(Shelf.Water(7.5, 28, 100, 600, 1200, 0.4)) with { Fill = Tap } },
        { "too_hard_with_tap_water_unknown", Shelf.Ask(Shelf.Water(7.5, 28, 100, 600, 1200, 0.4)) },
        { "too_much_stabiliser", Shelf.Ask(Shelf.Water(7.9, 28, 60, 150, 800, 0.4, 120), bands: Shelf.StabilisedBands) },
        { "one_drum_of_acid", Shelf.Ask(Shelf.Water(7.9, 28, 60, 150, 800, 0.4), [Shelf.Product(ProductKind.HydrochloricAcid, null)]) },
        { "too_much_chlorine", Shelf.Ask(Shelf.Water(7.5, 28, 100, 250, 800, 8)) },
    };

    [Theory]
    [MemberData(nameof(Stories))]
    public void The_plan_is_the_one_that_was_read_and_agreed(string name, PlanQuestion question)
    {
        var expected = GoldenPlans.Of(name);
        Assert.Equal(expected, Plan(question));
    }

    [Fact]
    public void A_balanced_water_asks_for_nothing() =>
        Assert.Equal(PlanOutcome.NothingToDo, DosingPlanner.Of(Shelf.Ask(Shelf.Water(7.4, 28, 100, 250, 800, 2, times: 1))).Outcome);

    [Fact]
    public void What_a_test_cannot_tell_from_its_band_is_repeated_and_not_dosed_for()
    {
        var plan = DosingPlanner.Of(Shelf.Ask(Shelf.Water(7.65, 28, 100, 250, 800, 2, times: 1)));
        Assert.Equal(PlanOutcome.NothingToDo, plan.Outcome);
        Assert.Equal(BandStanding.WithinUncertainty, plan.Aims.Single(a => a.Figure == PlannedFigure.Ph).Standing);
        Assert.Contains(plan.Says, r => r.Code == "plan.within_uncertainty");
    }

    [Fact]
    public void A_product_for_pH_is_never_given_whole_in_one_go()
    {
        // pH 7.78 to 7.6 is within the step of 0.3, and all the same half comes first: pools give off carbon dioxide (common practice).
        var plan = DosingPlanner.Of(Shelf.Ask(Shelf.Water(7.78, 28, 100, 250, 800, 2), [Shelf.Product(ProductKind.HydrochloricAcid, 0.6)]));
        Assert.Equal(PlanOutcome.Planned, plan.Outcome);
        Assert.All(plan.Steps, s => Assert.True(s.Parts >= 2));
        Assert.Equal(plan.Steps[0].Kilograms, plan.Steps[1].Kilograms, 1e-6 * plan.Steps[0].Kilograms);
    }

    [Fact]
    public void The_saturation_index_of_a_plan_is_as_unsure_as_its_tests_and_the_model()
    {
        // GUM: pH 0.12, alkalinity 14 of 100 and hardness 28 of 250 by their logarithms, the model 0.06, all at k = 2.
        var index = DosingPlanner.Of(Shelf.Ask(Shelf.Water(7.4, 28, 100, 250, 800, 2, times: 1))).Aims.Single(a => a.Figure == PlannedFigure.SaturationIndex).Now!.Value;
        Assert.Equal(Math.Sqrt((0.12 * 0.12) + Math.Pow(0.14 / Math.Log(10), 2) + Math.Pow(0.112 / Math.Log(10), 2) + (0.06 * 0.06)), index.U, 1e-6);
    }

    [Fact]
    public void A_missing_test_is_named_and_the_rest_is_planned()
    {
        var water = Shelf.Water(7.9, 28, 60, 150, 800, 0.4) with { Calcium = null };
        var plan = DosingPlanner.Of(Shelf.Ask(water));
        Assert.Equal(PlanOutcome.Planned, plan.Outcome);
        Assert.Contains(plan.Says, r => r.Code == "plan.not_tested" && r.Facts[0].Text == "calcium_hardness");
        Assert.Contains(plan.Says, r => r.Code == "plan.no_index");
        Assert.DoesNotContain(plan.Steps, s => s.Product!.PerKilogram.Calcium > 0);
    }

    [Fact]
    public void Without_pH_alkalinity_or_temperature_there_is_no_plan_and_it_says_which()
    {
        var plan = DosingPlanner.Of(Shelf.Ask(Shelf.Water(7.9, 28, 60, 150, 800, 0.4) with { Ph = null, Celsius = null }));
        Assert.Equal(PlanOutcome.Missing, plan.Outcome);
        Assert.Equal(["ph", "temperature"], plan.Says.Where(r => r.Code == "plan.missing_for_all").Select(r => r.Facts[0].Text));
    }

    [Fact]
    public void Bands_that_cross_or_that_no_water_can_meet_are_named_contradictory()
    {
        var water = Shelf.Water(7.4, 28, 100, 250, 800, 2);
        Assert.Equal(PlanOutcome.ContradictoryBands, DosingPlanner.Of(Shelf.Ask(water, bands: [new(PlannedFigure.Ph, 7.6, 7.2)])).Outcome);
        var soft = DosingPlanner.Of(Shelf.Ask(water, bands:
        [
            new(PlannedFigure.Ph, 7.0, 7.2), new(PlannedFigure.TotalAlkalinity, 40, 60), new(PlannedFigure.CalciumHardness, 50, 80), new(PlannedFigure.SaturationIndex, -0.1, 0.3),
        ]));
        Assert.Equal(PlanOutcome.ContradictoryBands, soft.Outcome);
        Assert.Equal("plan.index_always_below", soft.Says[0].Code);
        var hard = DosingPlanner.Of(Shelf.Ask(water, bands:
        [
            new(PlannedFigure.Ph, 7.8, 8.0), new(PlannedFigure.TotalAlkalinity, 180, 220), new(PlannedFigure.CalciumHardness, 500, 600), new(PlannedFigure.SaturationIndex, -0.3, 0.3),
        ]));
        Assert.Equal((PlanOutcome.ContradictoryBands, "plan.index_always_above"), (hard.Outcome, hard.Says[0].Code));
    }

    [Fact]
    public void A_water_that_cannot_be_is_refused_by_name() =>
        Assert.Equal("water.negative_carbon", DosingPlanner.Of(Shelf.Ask(Shelf.Water(9.5, 28, 20, 150, 800, 2, 300))).Says.Single().Code);

    [Fact]
    public void Handbook_aims_fill_only_what_the_plant_file_leaves_open()
    {
        var bands = UsualBands.Of(new() { Id = "p", Name = "P", Disinfectant = Disinfectant.Chlorine, Limits = [new(Measurand.Ph, 7.0, 7.4, "Permit 4"), new(Measurand.FreeChlorine, 3.5, null, "Permit 5")] });
        var ph = bands.Single(b => b.Figure == PlannedFigure.Ph);
        Assert.Equal((7.0, 7.4, "Permit 4", "Permit 4"), (ph.Low!.Value, ph.High!.Value, ph.LowSource, ph.HighSource));
        // The handbook's 3 mg/L would leave no room above the permit's 3.5.
        var chlorine = bands.Single(b => b.Figure == PlannedFigure.FreeChlorine);
        Assert.Equal((3.5, (double?)null), (chlorine.Low!.Value, chlorine.High));
        Assert.Null(bands.Single(b => b.Figure == PlannedFigure.TotalAlkalinity).LowSource);
        Assert.DoesNotContain(bands, b => b.Figure == PlannedFigure.CyanuricAcid);
    }

    [Fact]
    public void The_least_cost_is_given_to_whoever_asks_for_it()
    {
        var question = Shelf.Ask(Shelf.Water(7.9, 28, 60, 150, 800, 0.4));
        var (fewer, least) = (DosingPlanner.Of(question), DosingPlanner.Of(question with { Wish = PlanWish.LeastCost }));
        Assert.True(least.Cost < fewer.Cost);
        Assert.True(least.Steps.Length > 2 * fewer.Steps.Length);
        Assert.Contains(fewer.Says, r => r.Code == "plan.dearer_for_fewer_goes");
    }
}
