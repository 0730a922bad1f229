using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Tests.Chemistry.Doses;

public class ProductFactsTests
{
    private static readonly DateOnly Today = new(2026, 3, 1);

    private static Dictionary<string, string> Row(string id) => ReferenceRows.Of("Chemistry.Doses", "dose_values.csv").Single(row => row["id"] == id);

    [Theory]
    // Molar masses as in EPA/600/S-17/165 (computed).
    [InlineData("DOSE-A-NaOCl", ProductKind.SodiumHypochlorite)]
    [InlineData("DOSE-A-CaOCl", ProductKind.CalciumHypochlorite)]
    [InlineData("DOSE-A-tri", ProductKind.Trichlor)]
    [InlineData("DOSE-A-dia", ProductKind.Dichlor)]
    [InlineData("DOSE-A-did", ProductKind.DichlorDihydrate)]
    public void The_available_chlorine_of_the_pure_substance_is_met(string id, ProductKind kind)
    {
        var row = Row(id);
        var expected = double.Parse(row["expected"].TrimEnd('%'), System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(expected, 100 * ProductFacts.Of(kind).AvailableChlorineOfPure, row.Number("tolerance"));
    }

    [Theory]
    // DOSE-10, DOSE-11, DOSE-15 (computed): what comes with each mg of chlorine.
    [InlineData("DOSE-10", ProductKind.Trichlor, 0.607)]
    [InlineData("DOSE-11", ProductKind.Dichlor, 0.910)]
    [InlineData("DOSE-11", ProductKind.DichlorDihydrate, 0.910)]
    [InlineData("DOSE-15", ProductKind.CalciumHypochlorite, 0.706)]
    public void What_comes_along_with_chlorine_is_met(string id, ProductKind kind, double expected)
    {
        Assert.StartsWith(expected.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture), Row(id)["expected"], StringComparison.Ordinal);
        var adds = ProductAtHand.Of(new("p", "P", kind, null), Today).PerKilogram;
        var alongside = kind == ProductKind.CalciumHypochlorite ? adds.Calcium * 100.0869 : adds.Cyanurate * 129.07;
        Assert.Equal(expected, alongside / (adds.Chlorine * 70.906), Row(id).Number("tolerance"));
    }

    [Theory]
    // DOSE-12: Wahman and Alexander 2019 (abstract, published) count the moiety Cy of 126.05 g/mol.
    [InlineData(ProductKind.Dichlor, 0.89)]
    [InlineData(ProductKind.Trichlor, 0.59)]
    public void The_published_cyanurate_moiety_is_met(ProductKind kind, double expected)
    {
        var facts = ProductFacts.Of(kind);
        Assert.Equal(expected, 126.05 / (facts.ChlorinePerMole * 70.906), Row("DOSE-12").Number("tolerance"));
    }

    [Fact]
    public void Every_kind_of_the_plant_file_has_its_facts_or_says_that_it_is_not_worked_out()
    {
        ProductKind[] without = [ProductKind.Unknown, ProductKind.Monopersulfate, ProductKind.Bromine, ProductKind.Coagulant];
        foreach (var kind in Enum.GetValues<ProductKind>())
        {
            var facts = ProductFacts.Of(kind);
            Assert.Equal(kind, facts.Kind);
            Assert.Equal(!without.Contains(kind), facts.IsModelled);
            Assert.Equal(facts.IsModelled, ProductAtHand.Of(new("p", "P", kind, null), Today).PerKilogram != default);
        }
    }

    [Fact]
    public void The_same_twelve_per_cent_are_three_strengths()
    {
        // Definitions: trade per cent is g of Cl2 in 100 mL; NaOCl counts 0.9525 of its weight as chlorine.
        static double GramsPerLitre(StrengthMeaning means) =>
            ProductAtHand.Of(new("p", "P", ProductKind.SodiumHypochlorite, 12) { Means = means, Density = 1.2, StrengthOn = Today }, Today) is { } hypo
                ? 1000 * hypo.AvailableChlorine * hypo.KilogramsPerLitre!.Value : 0;

        Assert.Equal(120, GramsPerLitre(StrengthMeaning.Trade), 1e-9);
        Assert.Equal(144, GramsPerLitre(StrengthMeaning.Weight), 1e-9);
        Assert.Equal(137.2, GramsPerLitre(StrengthMeaning.SodiumHypochlorite), 0.05);
        // Not stated: the strongest reading, so that a dose is the smaller one.
        Assert.Equal(144, GramsPerLitre(StrengthMeaning.Unknown), 1e-9);
    }

    [Fact]
    public void A_meaning_that_is_not_stated_an_age_and_a_grade_that_are_not_known_are_said() => Assert.Equal(
        ["product.meaning_unstated", "product.age_unknown"],
        ProductAtHand.Of(new("p", "P", ProductKind.SodiumHypochlorite, 12), Today).Strength.Says.Select(reason => reason.Code));

    [Fact]
    public void A_product_without_a_label_has_the_usual_grade_and_says_so()
    {
        var acid = ProductAtHand.Of(new("p", "P", ProductKind.HydrochloricAcid, null), Today);
        Assert.Equal(0.3145, acid.Strength.Fraction);
        Assert.Equal(1.160, acid.KilogramsPerLitre);
        Assert.Equal("product.grade_usual", Assert.Single(acid.Strength.Says).Code);
    }

    [Theory]
    // The trade's table of half lives at 25 degC (from memory), which the rate law is held to within its uncertainty of a factor of two.
    [InlineData(150, 100)]
    [InlineData(100, 220)]
    [InlineData(50, 790)]
    public void Hypochlorite_halves_about_when_the_trade_says(double gramsPerLitre, double days)
    {
        var (low, high) = (HypochloriteDecay.Left(gramsPerLitre, Math.Min(days / 2, 365), 25).Value, HypochloriteDecay.Left(gramsPerLitre, Math.Min(days * 2, 365), 25).Value);
        Assert.True(low > 0.5, $"{low} left at half the time");
        if (days * 2 <= 365) Assert.True(high < 0.5, $"{high} left at twice the time");
    }

    [Fact]
    public void Ten_degrees_warmer_hypochlorite_decays_three_to_four_times_as_fast()
    {
        // Published by makers of hypochlorite: 3.5 times for 10 degC.
        double Loss(double celsius) => (1 / HypochloriteDecay.Left(120, 10, celsius).Value) - 1;
        Assert.InRange(Loss(30) / Loss(20), 3.2, 4.5);
    }

    [Fact]
    public void What_hypochlorite_loses_stays_in_the_water_as_chloride()
    {
        var plan = new ProductPlan("p", "P", ProductKind.SodiumHypochlorite, 12.5) { Means = StrengthMeaning.Trade, StrengthOn = Today };
        var (fresh, old) = (ProductAtHand.Of(plan, Today).PerKilogram, ProductAtHand.Of(plan, Today.AddDays(60)).PerKilogram);
        Assert.InRange(old.Chlorine / fresh.Chlorine, 0.75, 0.95);
        Assert.Equal(fresh.Sodium, old.Sodium, 1e-12);
        Assert.Equal(fresh.Chlorine + fresh.Chloride, old.Chlorine + old.Chloride, 1e-12);
    }

    [Fact]
    public void An_assay_goes_before_the_label_and_its_age()
    {
        var plan = new ProductPlan("p", "P", ProductKind.SodiumHypochlorite, 15) { Means = StrengthMeaning.Trade, StrengthOn = Today.AddDays(-90), Assay = 11, AssayedOn = Today, Density = 1.2 };
        var hypo = ProductAtHand.Of(plan, Today);
        Assert.Equal(0.11 / 1.2, hypo.Strength.Fraction, 1e-12);
        Assert.Equal(0, hypo.Strength.AgeDays);
        Assert.Empty(hypo.Strength.Says);
    }

    [Fact]
    public void A_price_by_the_litre_becomes_one_by_the_kilogram() => Assert.Equal(
        0.8, ProductAtHand.Of(new("p", "P", ProductKind.HydrochloricAcid, 32) { PricePerLitre = 0.928, Density = 1.16 }, Today).CostPerKilogram!.Value, 1e-12);
}
