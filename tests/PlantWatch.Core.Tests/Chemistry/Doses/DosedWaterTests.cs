using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Doses;

public partial class DosedWaterTests
{
    private static readonly DateOnly Today = new(2026, 3, 1);

    private static ProductAtHand Pure(ProductKind kind) => ProductAtHand.Of(new("p", "P", kind, 100) { Means = StrengthMeaning.Weight }, Today);

    private static Speciation Water(double ph, double celsius, double alkalinity, double calcium, double solids, double chlorine = 0) => Equilibrium.Speciate(
        new(Ph.From(ph), Celsius.From(celsius), Alkalinity.From(alkalinity), CalciumHardness.From(calcium), DissolvedSolids.From(solids)) { FreeChlorine = FreeChlorine.From(chlorine) }).Value;

    public static TheoryData<string> Rows => [.. ReferenceRows.Of("Chemistry.Doses", "dose_ph_values.csv").Select(row => row["id"])];

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_reagent_bought_pure_gives_the_pH_of_the_independent_program(string id)
    {
        // USGS PHREEQC 3.8.9, phreeqc.dat (generated): closed system, 0.01 for the same model.
        var row = ReferenceRows.Of("Chemistry.Doses", "dose_ph_values.csv").Single(r => r["id"] == id);
        var inputs = Inputs().Match(row["inputs"]);
        double Input(int i) => double.Parse(inputs.Groups[i].Value, CultureInfo.InvariantCulture);
        var kind = inputs.Groups[6].Value switch
        {
            "HCl" => ProductKind.HydrochloricAcid,
            "CO2" => ProductKind.CarbonDioxide,
            "NaHCO3" => ProductKind.SodiumBicarbonate,
            "Na2CO3" => ProductKind.SodiumCarbonate,
            "NaOH" => ProductKind.SodiumHydroxide,
            _ => ProductKind.SodiumBisulfate,
        };
        var water = Water(Input(1), Input(2), Input(3), Input(4), Input(5));
        var product = Pure(kind);
        var dosed = DosedWater.Of(water, product, Input(7) * product.Facts.MolarMass / 1000)!;
        Assert.Equal(row.Number("expected"), dosed.AtOnce.Ph, 0.01);
    }

    [GeneratedRegex(@"pH ([\d.]+); ([\d.]+) C; TA ([\d.]+); CH ([\d.]+); TDS ([\d.]+); (\w+) ([\d.]+) mmol")]
    private static partial Regex Inputs();

    [Fact]
    public void Hypochlorite_raises_the_pH_at_once_and_leaves_little_of_that_when_it_is_spent()
    {
        var hypo = ProductAtHand.Of(new("p", "P", ProductKind.SodiumHypochlorite, 12.5) { Means = StrengthMeaning.Trade, StrengthOn = Today }, Today);
        var dosed = DosedWater.Of(Water(7.4, 28, 80, 200, 1000, 1), hypo, DoseAmount.ForChange(hypo, Measurand.FreeChlorine, 5, 1).Value)!;
        Assert.Equal(6, dosed.AtOnce.FreeChlorine, 1e-6);
        Assert.InRange(dosed.AtOnce.Ph - dosed.Before.Ph, 0.05, 0.5);
        Assert.Equal(1, dosed.Spent!.FreeChlorine, 1e-6);
        Assert.InRange(dosed.Spent.Ph - dosed.Before.Ph, 0, 0.03);
    }

    [Fact]
    public void Over_its_whole_cycle_gas_takes_1_41_mg_of_alkalinity_for_each_mg_of_chlorine()
    {
        // Reference pack, section 4 (computed): two equivalents a mole of Cl2.
        var dosed = DosedWater.Of(Water(7.4, 28, 120, 200, 1000), Pure(ProductKind.ChlorineGas), 0.005)!;
        Assert.Equal(-1.41 * 5, dosed.Spent!.TotalAlkalinity - dosed.Before.TotalAlkalinity, 0.02);
    }

    [Fact]
    public void Soda_ash_clouds_before_it_is_alkaline()
    {
        // Reference pack, section 4 (PHREEQC): 0.1 mmol Na2CO3 -> pH 8.334, SI +0.90.
        var soda = Pure(ProductKind.SodiumCarbonate);
        var dosed = DosedWater.Of(Water(7.8, 27, 100, 250, 1000), soda, 0.1 * soda.Facts.MolarMass / 1000)!;
        Assert.Equal(0.90, dosed.AtOnce.SaturationIndex, 0.005);
    }

    [Fact]
    public void More_dechlorinator_than_there_is_chlorine_leaves_none_and_no_less() =>
        Assert.Equal(0, DosedWater.Of(Water(7.4, 28, 100, 200, 1000, 2), Pure(ProductKind.SodiumThiosulfate), 0.02)!.AtOnce.FreeChlorine);

    [Fact]
    public void The_amount_for_a_pH_brings_that_pH()
    {
        ProductKind[] kinds = [ProductKind.HydrochloricAcid, ProductKind.SulfuricAcid, ProductKind.SodiumBisulfate, ProductKind.CarbonDioxide, ProductKind.SodiumCarbonate, ProductKind.SodiumHydroxide];
        Gen.Select(Gen.Int[0, kinds.Length - 1].Select(i => kinds[i]), Gen.Double[7, 8.2], Gen.Double[20, 35], Gen.Double[40, 200], Gen.Double[0.02, 0.6]).Sample((kind, ph, celsius, alkalinity, step) =>
        {
            var water = Water(ph, celsius, alkalinity, 250, 1200);
            var target = ph + (step * ProductUse.Direction(kind, Measurand.Ph));
            var kilograms = DoseAmount.ForPh(Pure(kind), water, target, 300);
            Assert.True(kilograms.IsKnown, kilograms.Why?.Code);
            Assert.Equal(target, DosedWater.Of(water, Pure(kind), kilograms.Value / 300)!.AtOnce.Ph, 1e-4);
        }, iter: 300);
    }
}
