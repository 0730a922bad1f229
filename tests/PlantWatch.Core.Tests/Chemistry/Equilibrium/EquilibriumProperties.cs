using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

/// <summary>What must hold for every water, not for the tabulated ones only.</summary>
public sealed class EquilibriumProperties
{
    // Wider than any pool: from soft rain to brine of a salt pool, with and without stabiliser, chlorine and borate.
    private static readonly Gen<Water> AnyWater =
        from ph in Gen.Double[5.5, 10]
        from celsius in Gen.Double[0, 50]
        from alkalinity in Gen.Double[20, 600]
        from calcium in Gen.Double[0, 1500]
        from solids in Gen.Double[50, 20_000]
        from cyanurate in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 300])
        from chlorine in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 40])
        from boron in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 60])
        select Waters.Of(ph, celsius, alkalinity, calcium, solids) with
        {
            Cyanurate = CyanuricAcid.From(cyanurate), FreeChlorine = FreeChlorine.From(chlorine), BoronMilligramsPerLitre = boron,
        };

    [Fact]
    public void A_million_random_waters_close_their_balances_or_are_named_impossible()
    {
        AnyWater.Sample(water =>
        {
            var result = Equilibrium.Speciate(water);
            if (result.Failure == EquilibriumFailure.NegativeCarbon)
            {
                Assert.True(AlkalinityWithoutCarbon(water) > 0.8 * water.Alkalinity.MilligramsPerLitre);
                return;
            }

            Assert.Equal(EquilibriumFailure.None, result.Failure);
            Closes(result.Value);
            Assert.Equal(water.Ph.Value, result.Value.Ph, 1e-9);
        }, iter: 1_000_000);
    }

    [Fact]
    public void A_water_whose_borate_is_all_of_its_alkalinity_holds_no_carbon_and_is_named_so()
    {
        // Found by the million: 0.0001 of pH below, carbon is 4e-8 mol/kg; above, less than none; between, no search can tell.
        Water At(double ph) => Waters.Of(ph, 0, 77.53061224489795, 0, 5702) with { BoronMilligramsPerLitre = 19.025751908303825 };
        Assert.Equal(4e-8, Equilibrium.Speciate(At(9.964784193388901)).Value.Composition.Carbon, 1e-8);
        Assert.Equal(EquilibriumFailure.NegativeCarbon, Equilibrium.Speciate(At(9.964884193388901)).Failure);
        Assert.Equal(EquilibriumFailure.NegativeCarbon, Equilibrium.Speciate(At(9.964984193388901)).Failure);
        // A second one, colder and saltier: 0.0001 of pH below, carbon is 3e-7 mol/kg.
        Water Cold(double ph) => new(Ph.From(ph), Celsius.From(0.10526315789473684), Alkalinity.From(104.92648629492818), CalciumHardness.From(68), DissolvedSolids.From(8079.452817786676)) { BoronMilligramsPerLitre = 52.20616794090981 };
        Assert.Equal(3e-7, Equilibrium.Speciate(Cold(8.9999)).Value.Composition.Carbon, 1e-7);
        Assert.Equal(EquilibriumFailure.NegativeCarbon, Equilibrium.Speciate(Cold(9)).Failure);
    }

    [Fact]
    public void The_composition_of_a_measured_water_gives_its_pH_back() => Known((water, speciation) =>
    {
        var again = Equilibrium.At(speciation.Composition, water.Temperature);
        Assert.Equal(EquilibriumFailure.None, again.Failure);
        Closes(again.Value);
        Assert.Equal(water.Ph.Value, again.Value.Ph, 1e-8);
        Assert.Equal(water.Alkalinity.MilligramsPerLitre, again.Value.TotalAlkalinity, 1e-6);
        Assert.Equal(water.Calcium.MilligramsPerLitre, again.Value.CalciumHardness, 1e-6);
    });

    [Fact]
    public void Acid_lowers_and_lye_raises_pH_always() => Known((_, before) =>
    {
        foreach (var amount in (double[])[1e-6, 1e-5, 1e-4])
        {
            Assert.True(Equilibrium.After(before, before.Composition + new Composition(Chloride: amount)).Value.Ph < before.Ph);
            Assert.True(Equilibrium.After(before, before.Composition + new Composition(Sodium: amount)).Value.Ph > before.Ph);
            Assert.True(Equilibrium.After(before, before.Composition + new Composition(Carbon: amount)).Value.Ph < before.Ph);
        }
    });

    [Fact]
    public void Calcium_raises_the_saturation_and_cyanurate_lowers_hypochlorous_acid() => Known((_, before) =>
    {
        var more = Equilibrium.After(before, before.Composition + new Composition(Calcium: 1e-4, Chloride: 2e-4)).Value;
        if (before.Composition.Calcium > 0) Assert.True(more.SaturationIndex > before.SaturationIndex);
        if (before.FreeChlorine < 0.01) return;
        // As its sodium salt, so that pH hardly moves and the binding is what is seen.
        var stabilised = Equilibrium.After(before, before.Composition + new Composition(Sodium: 4e-5, Cyanurate: 5e-5)).Value;
        Assert.True(stabilised.HypochlorousAcid + stabilised.HypochloriteIon < before.HypochlorousAcid + before.HypochloriteIon);
    });

    [Fact]
    public void From_a_known_water_or_from_the_start_the_answer_is_the_same() => Known((water, before) =>
    {
        // The chlorine is gone, some acid came: species that the known water held are not there any more.
        var changed = before.Composition with { Chlorine = 0, Chloride = before.Composition.Chloride + 1e-4 };
        var (near, anew) = (Equilibrium.After(before, changed).Value, Equilibrium.At(changed, water.Temperature).Value);
        Assert.Equal(anew.Ph, near.Ph, 1e-8);
        Assert.Equal(anew.IonicStrength, near.IonicStrength, 1e-10);
        Assert.Equal(anew.Species.Length, near.Species.Length);
    });

    [Fact]
    public void What_precipitates_leaves_a_water_that_is_just_saturated() => Known((_, before) =>
    {
        if (before.Composition.Calcium == 0) return;
        var potential = Calcite.PrecipitationPotential(before);
        Assert.NotNull(potential);
        if (Math.Abs(before.SaturationIndex) > 1e-6) Assert.Equal(Math.Sign(before.SaturationIndex), Math.Sign(potential.Value));
        var moles = potential.Value / 100086.9;
        var left = Equilibrium.After(before, before.Composition - new Composition(Carbon: moles, Calcium: moles));
        Assert.Equal(0, left.Value.SaturationIndex, 1e-6);
    });

    [Fact]
    public void The_saturation_pH_is_where_the_same_alkalinity_and_calcium_are_just_saturated() => Known((water, before) =>
    {
        if (Calcite.SaturationPh(before) is not { } ph || !Equilibrium.ValidPh.Contains(ph)) return;
        var there = Equilibrium.Speciate(water with { Ph = Ph.From(ph) }, before.IsIdeal);
        Assert.Equal(0, there.Value.SaturationIndex, 1e-6);
    });

    // By hand, ideal: cyanurate (pK 6.88), borate (9.24), chlorinated cyanurate and hypochlorite (at most one charge a chlorine), hydroxide free and bound to calcium, in mg/L as CaCO3.
    private static double AlkalinityWithoutCarbon(Water water)
    {
        double Part(double pk) => 1 / (1 + Math.Pow(10, pk - water.Ph.Value));
        var equivalents = (water.Cyanurate!.Value.MilligramsPerLitre / 129070 * Part(6.7)) + (water.BoronMilligramsPerLitre / 10811 * Part(9.0))
            + (water.FreeChlorine!.Value.MilligramsPerLitre / 70906) + Math.Pow(10, water.Ph.Value - 14.75 + (0.034 * water.Temperature.Degrees)) + (water.Calcium.MilligramsPerLitre / 100087 * Math.Pow(10, water.Ph.Value - 12.78));
        return equivalents * 50043;
    }

    private static void Known(Action<Water, Speciation> holds) => AnyWater.Sample(water =>
    {
        var result = Equilibrium.Speciate(water);
        if (result.IsKnown) holds(water, result.Value);
        else Assert.Equal(EquilibriumFailure.NegativeCarbon, result.Failure);
    }, iter: 20_000);

    // Written out from formulas and charges, without the solver's own arrays of counts.
    private static void Closes(Speciation water)
    {
        double charge = -water.Composition.Chloride, charges = water.Composition.Chloride;
        double carbon = 0, calcium = 0, sodium = 0, cyanurate = 0, chlorine = 0, boron = 0;
        foreach (var (name, z, molality) in water.Species)
        {
            Assert.True(double.IsFinite(molality) && molality >= 0);
            charge += z * molality;
            charges += Math.Abs(z) * molality;
            if (name.Contains("CO3", StringComparison.Ordinal) || name == "CO2") carbon += molality;
            if (name.Contains("Ca", StringComparison.Ordinal)) calcium += molality;
            if (name.Contains("Na", StringComparison.Ordinal)) sodium += molality;
            if (name.Contains("Cy", StringComparison.Ordinal)) cyanurate += molality;
            if (name.StartsWith("B(", StringComparison.Ordinal)) boron += molality;
            chlorine += molality * (name.Contains("Cl3", StringComparison.Ordinal) ? 3 : name.Contains("Cl2", StringComparison.Ordinal) ? 2 : name.Contains("Cl", StringComparison.Ordinal) ? 1 : 0);
        }

        Assert.True(Math.Abs(charge) <= 1e-9 * charges, $"charge {charge} of {charges}");
        Same(water.Composition.Carbon, carbon);
        Same(water.Composition.Calcium, calcium);
        Same(water.Composition.Sodium, sodium);
        Same(water.Composition.Cyanurate, cyanurate);
        Same(water.Composition.Chlorine, chlorine);
        Same(water.Composition.Boron, boron);
    }

    private static void Same(double expected, double sum) => Assert.True(Math.Abs(expected - sum) <= 1e-9 * expected, $"{sum} instead of {expected}");
}
