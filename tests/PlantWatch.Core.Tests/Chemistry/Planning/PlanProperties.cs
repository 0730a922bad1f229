using System.Collections.Immutable;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Planning;

/// <summary>What must hold for every plan, whatever the water and whatever stands in the store.</summary>
public sealed class PlanProperties
{
    private static readonly ProductKind[] Kinds =
    [
        ProductKind.SodiumBicarbonate, ProductKind.SodiumCarbonate, ProductKind.SodiumHydroxide, ProductKind.HydrochloricAcid, ProductKind.SulfuricAcid, ProductKind.SodiumBisulfate,
        ProductKind.CarbonDioxide, ProductKind.CalciumChlorideDihydrate, ProductKind.SodiumHypochlorite, ProductKind.CalciumHypochlorite, ProductKind.Trichlor, ProductKind.CyanuricAcid,
        ProductKind.SodiumThiosulfate, ProductKind.SodiumChloride,
    ];

    // From soft and sour to hard and sharp; tests exact, or as good as a photometer.
    private static readonly Gen<TestedWater> AnyWater =
        from ph in Tenths(66, 86, 10)
        from celsius in Tenths(15, 38, 1)
        from alkalinity in Tenths(4, 24, 0.1)
        from calcium in Tenths(4, 60, 0.1)
        from solids in Tenths(40, 180, 0.1)
        from chlorine in Tenths(0, 60, 10)
        from cyanurate in Tenths(0, 8, 0.1)
        from times in Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0))
        select Shelf.Water(ph, celsius, alkalinity, calcium, solids, chlorine, cyanurate, times);

    private static readonly Gen<ImmutableArray<ProductAtHand>> AnyStore =
        Gen.Select(Gen.Bool.Array[14], Tenths(3, 60, 10).Array[14], (has, price) => Kinds.Select((k, i) => (k, i)).Where(p => has[p.i]).Select(p => Shelf.Product(p.k, price[p.i])).ToImmutableArray());

    private static readonly Water Tap = new(Ph.From(7.7), Celsius.From(12), Alkalinity.From(110), CalciumHardness.From(140), DissolvedSolids.From(320));

    [Fact]
    public void Every_plan_is_confirmed_by_the_equilibrium_in_every_band_and_no_step_passes_a_limit() =>
        Gen.Select(AnyWater, AnyStore, Gen.Bool).Sample((water, store, withTap) =>
        {
            var question = Shelf.Ask(water, store, Shelf.StabilisedBands) with { Fill = withTap ? Tap : null };
            var plan = DosingPlanner.Of(question);
            Assert.NotEqual(PlanOutcome.Unknown, plan.Outcome);
            Assert.NotEqual(PlanOutcome.Missing, plan.Outcome);
            Assert.DoesNotContain("NaN", PlanText.Of(plan), StringComparison.Ordinal);
            if (plan.Outcome is PlanOutcome.Planned or PlanOutcome.PlannedAfterDilution) ReachesEveryBand(plan);
            if (plan.Outcome is PlanOutcome.NoPlan or PlanOutcome.PlannedInPart or PlanOutcome.ImpossibleWater or PlanOutcome.ContradictoryBands) Assert.NotEmpty(plan.Says);
            if (plan.Outcome == PlanOutcome.NothingToDo) Assert.All(plan.Aims, a => Assert.True(a.Standing is BandStanding.Inside or BandStanding.WithinUncertainty));
            KeepsTheWay(plan, question);
        }, iter: 1000);

    [Fact]
    public void The_same_question_has_the_same_plan() =>
        Gen.Select(AnyWater, AnyStore).Sample((water, store) =>
            Assert.Equal(PlanText.Of(DosingPlanner.Of(Shelf.Ask(water, store))), PlanText.Of(DosingPlanner.Of(Shelf.Ask(water, store)))), iter: 200);

    [Fact]
    public void A_thousand_random_choices_of_the_same_products_find_no_cheaper_plan() =>
        Gen.Select(AnyWater, AnyStore, Gen.Int).Sample((water, all, seed) =>
        {
            // Neither dechlorinator nor salt: a plan keeps to what they are for.
            ImmutableArray<ProductAtHand> store = [.. all.Where(p => p.Plan.Kind is not (ProductKind.SodiumThiosulfate or ProductKind.SodiumChloride))];
            var question = Shelf.Ask(water, store, Shelf.StabilisedBands) with { Wish = PlanWish.LeastCost };
            var plan = DosingPlanner.Of(question);
            if (plan.Outcome != PlanOutcome.Planned) return;
            var amounts = store.Select(p => plan.Steps.Where(s => s.Product == p).Sum(s => s.Kilograms)).ToArray();
            var random = new Random(seed);
            for (var i = 0; i < 1000; i++)
            {
                var tried = amounts.Select((a, j) => Perturbed(random, a, 40 / Math.Max(0.05, Math.Abs(store[j].PerKilogram.StrongCharge) + store[j].PerKilogram.Carbon + store[j].PerKilogram.Chlorine))).ToArray();
                var cost = tried.Select((kg, j) => kg * store[j].CostPerKilogram!.Value).Sum();
                if (cost >= plan.Cost * 0.998 || !IsInside(plan, store, tried)) continue;
                Assert.Fail($"{cost} is cheaper than {plan.Cost}: {string.Join(' ', tried)} instead of {string.Join(' ', amounts)}\n{PlanText.Of(plan)}");
            }
        }, iter: 100);

    [Fact]
    public void More_products_at_hand_never_cost_more() =>
        Gen.Select(AnyWater, AnyStore, Gen.Int[0, 20]).Sample((water, store, without) =>
        {
            if (store.Length < 2) return;
            var fewer = DosingPlanner.Of(Shelf.Ask(Exact(water), store.RemoveAt(without % store.Length)) with { Wish = PlanWish.LeastCost });
            var more = DosingPlanner.Of(Shelf.Ask(Exact(water), store) with { Wish = PlanWish.LeastCost });
            if (fewer.Outcome != PlanOutcome.Planned || IsPatient(fewer) || IsPatient(more)) return;
            Assert.True(more.Outcome is PlanOutcome.Planned or PlanOutcome.NoSafeOrder, PlanText.Of(more));
            Assert.True(more.Cost <= (fewer.Cost * 1.002) + 1e-6, PlanText.Of(fewer) + PlanText.Of(more));
        }, iter: 600);

    private static bool IsPatient(DosingPlan plan) => plan.Steps.Any(s => s.Kind != MeansKind.Dose);

    private static TestedWater Exact(TestedWater w) => w with
    {
        Ph = new(w.Ph!.Value.Value), Alkalinity = new(w.Alkalinity!.Value.Value), Calcium = new(w.Calcium!.Value.Value), Solids = new(w.Solids!.Value.Value),
        FreeChlorine = new(w.FreeChlorine!.Value.Value), Cyanurate = new(w.Cyanurate!.Value.Value),
    };

    private static double Perturbed(Random random, double amount, double scale) => random.Next(4) switch
    {
        0 => amount,
        1 => amount * (0.8 + (0.3 * random.NextDouble())),
        2 => Math.Max(0, amount + (0.02 * scale * (random.NextDouble() - 0.5))),
        _ => scale * 0.2 * random.NextDouble() * random.NextDouble(),
    };

    // By the hair that a plan keeps from the ends of a band, so that the equilibrium itself confirms it.
    private static bool IsInside(DosingPlan plan, ImmutableArray<ProductAtHand> store, double[] kilograms)
    {
        var c = plan.Now!.Composition;
        for (var j = 0; j < kilograms.Length; j++) c += kilograms[j] / 400_000 * store[j].PerKilogram;
        return Equilibrium.At(c, Celsius.From(plan.Now.Temperature)) is { IsKnown: true } end && plan.Aims.All(a => Holds(a, end.Value, -0.4 * PlannedFigures.Tolerance(a.Figure)) && HasItsMargin(a, end.Value));
    }

    // What the margin asks is part of the question: a plan without it may well be cheaper.
    private static bool HasItsMargin(Aim aim, Speciation water)
    {
        if (aim.Now is not { } now) return true;
        var value = PlannedFigures.Of(water, aim.Figure);
        var low = aim.Band.Low is { } l ? Math.Min(l + aim.Margin, Math.Max(now.Value, l - now.U)) : double.NegativeInfinity;
        var high = aim.Band.High is { } h ? Math.Max(h - aim.Margin, Math.Min(now.Value, h + now.U)) : double.PositiveInfinity;
        if (aim.Standing == BandStanding.Below) low = aim.Band.Low!.Value + aim.Margin;
        if (aim.Standing == BandStanding.Above) high = aim.Band.High!.Value - aim.Margin;
        return value >= low && value <= high;
    }

    private static void ReachesEveryBand(DosingPlan plan)
    {
        var end = Equilibrium.At(plan.End!.Composition, Celsius.From(plan.End.Temperature)).Value;
        Assert.All(plan.Aims, a => Assert.True(Holds(a, end, PlannedFigures.Tolerance(a.Figure)), $"{a}\n{PlanText.Of(plan)}"));
        if (plan.Steps.Length == 0 || plan.IsOnlyTheStart) return;
        // Amounts under a millionth of a mmol/L are not given.
        Assert.Equal(plan.End.Ph, plan.Steps[^1].After.Ph, 1e-5);
        Assert.Equal(plan.End.TotalAlkalinity, plan.Steps[^1].After.TotalAlkalinity, 1e-3);
    }

    // A figure that its test cannot tell from the band may stay there.
    private static bool Holds(Aim aim, Speciation water, double tolerance)
    {
        if (aim.Now is not { } now) return true;
        var u = aim.Standing == BandStanding.WithinUncertainty ? now.U : 0;
        var value = PlannedFigures.Of(water, aim.Figure);
        return !(value < aim.Band.Low - u - tolerance) && !(value > aim.Band.High + u + tolerance);
    }

    private static void KeepsTheWay(DosingPlan plan, PlanQuestion question)
    {
        if (plan.Steps.IsEmpty) return;
        var start = plan.Steps[0].Before;
        var composition = start.Composition;
        foreach (var step in plan.Steps)
        {
            Assert.True(step.Kind != MeansKind.Dose || step.Kilograms > 0);
            if (step.Product is { } product) composition += step.Kilograms / (1000 * question.CubicMetres) * product.PerKilogram;
            else composition = step.After.Composition;
            var after = Equilibrium.At(composition, Celsius.From(start.Temperature)).Value;
            Assert.Equal(step.After.Ph, after.Ph, 1e-6);
            foreach (var aim in plan.Aims.Where(a => a.Figure is PlannedFigure.Ph or PlannedFigure.SaturationIndex or PlannedFigure.FreeChlorine))
            {
                var (now, value, slack) = (PlannedFigures.Of(start, aim.Figure), PlannedFigures.Of(after, aim.Figure), PlannedFigures.Tolerance(aim.Figure) * 1.01);
                Assert.False(value < Math.Min(now, aim.Band.Low ?? double.NegativeInfinity) - slack || value > Math.Max(now, aim.Band.High ?? double.PositiveInfinity) + slack, PlanText.Of(plan));
            }

            Assert.True(Math.Abs(step.After.Ph - step.Before.Ph) <= question.Caps.Ph * 1.0001, PlanText.Of(plan));
            Assert.True(Math.Abs(step.After.FreeChlorine - step.Before.FreeChlorine) <= question.Caps.FreeChlorine * 1.0001, PlanText.Of(plan));
            Assert.True(Math.Abs(step.After.CalciumHardness - step.Before.CalciumHardness) <= question.Caps.Calcium * 1.0001, PlanText.Of(plan));
        }
    }

    private static Gen<double> Tenths(int low, int high, double per) => Gen.Int[low, high].Select(i => i / per);
}
