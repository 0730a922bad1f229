using System.Globalization;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Doses;

public class DoseAmountTests
{
    private const double Gallon = 3.785411784, Pound = 0.45359237, Ounce = Pound / 16, FluidOunce = 0.0295735295625, TenThousandGallons = 10 * Gallon;
    private static readonly DateOnly Today = new(2026, 3, 1);

    private static ProductAtHand Product(ProductKind kind, double? percent = 100, double? density = null, StrengthMeaning means = StrengthMeaning.Weight) =>
        ProductAtHand.Of(new("p", "P", kind, percent) { Means = means, Density = density }, Today);

    private static Dictionary<string, string> Row(string id) => ReferenceRows.Of("Chemistry.Doses", "dose_values.csv").Single(row => row["id"] == id);

    public static TheoryData<string, ProductKind, Measurand> Rows => new()
    {
        { "sodium bicarbonate", ProductKind.SodiumBicarbonate, Measurand.TotalAlkalinity },
        { "sodium carbonate", ProductKind.SodiumCarbonate, Measurand.TotalAlkalinity },
        { "hydrochloric acid", ProductKind.HydrochloricAcid, Measurand.TotalAlkalinity },
        { "hydrochloric acid 32 %", ProductKind.HydrochloricAcid, Measurand.TotalAlkalinity },
        { "sodium bisulfate", ProductKind.SodiumBisulfate, Measurand.TotalAlkalinity },
        { "sulfuric acid 38.5 %", ProductKind.SulfuricAcid, Measurand.TotalAlkalinity },
        { "calcium chloride anhydrous", ProductKind.CalciumChloride, Measurand.CalciumHardness },
        { "calcium chloride dihydrate", ProductKind.CalciumChlorideDihydrate, Measurand.CalciumHardness },
        { "sodium hypochlorite, 12.5 trade % (w/v available Cl2)", ProductKind.SodiumHypochlorite, Measurand.FreeChlorine },
        { "sodium hypochlorite, 10 % w/v av. Cl2", ProductKind.SodiumHypochlorite, Measurand.FreeChlorine },
        { "calcium hypochlorite 65 %", ProductKind.CalciumHypochlorite, Measurand.FreeChlorine },
        { "calcium hypochlorite 73 %", ProductKind.CalciumHypochlorite, Measurand.FreeChlorine },
        { "trichlor 90 %", ProductKind.Trichlor, Measurand.FreeChlorine },
        { "dichlor dihydrate 55.4 %", ProductKind.DichlorDihydrate, Measurand.FreeChlorine },
        { "chlorine gas", ProductKind.ChlorineGas, Measurand.FreeChlorine },
        { "cyanuric acid", ProductKind.CyanuricAcid, Measurand.CyanuricAcid },
        { "sodium chloride", ProductKind.SodiumChloride, Measurand.DissolvedSolids },
        { "sodium thiosulfate pentahydrate, 4 Cl2 : 1 S2O3 (to sulfate)", ProductKind.SodiumThiosulfate, Measurand.FreeChlorine },
        { "sodium sulfite anhydrous", ProductKind.SodiumSulfite, Measurand.FreeChlorine },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_table_of_doses_is_met_in_both_its_columns(string chemical, ProductKind kind, Measurand target)
    {
        // dose_stoichiometry.csv (computed from molar masses): g per m3 of the pure substance, and what 10,000 US gallons take of the grade assumed.
        var rows = ReferenceRows.Of("Chemistry.Doses", "dose_stoichiometry.csv").Where(row => row["chemical"] == chemical).ToList();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
        {
            var change = double.Parse(row["effect"].Split(' ')[0], CultureInfo.InvariantCulture);
            var grade = row["grade assumed"].Split(", ").Select(part => double.Parse(part.Split(' ')[0], CultureInfo.InvariantCulture)).ToArray();
            double? density = grade.Length > 1 ? grade[1] : null;
            var product = Product(kind, 100 * grade[0], density);

            var pure = row.Number("stoichiometric g per m3 per unit (pure)");
            Assert.Equal(pure, 1000 * grade[0] * DoseAmount.ForChange(product, target, change, 1).Value, Math.Max(6e-5, pure * 2e-5));

            var kilograms = DoseAmount.ForChange(product, target, change, TenThousandGallons).Value;
            foreach (var said in row["per 10,000 US gal (37.854 m3)"].Split(" = "))
            {
                var unit = said[(said.IndexOf(' ') + 1)..];
                var each = unit switch
                {
                    "lb" => kilograms / Pound,
                    "oz" => kilograms / Ounce,
                    "US fl oz" => kilograms / density!.Value / FluidOunce,
                    _ => kilograms / density!.Value / Gallon,
                };
                var printed = double.Parse(said.Split(' ')[0], CultureInfo.InvariantCulture);
                // Half a unit of the last of four printed digits.
                Assert.Equal(printed, each, printed * 6e-4);
            }
        }
    }

    [Fact]
    public void Every_row_of_the_table_of_doses_is_tested()
    {
        var tested = Rows.Select(row => (string)row[0]).Append("sodium thiosulfate pentahydrate, 1 Cl2 : 2 S2O3 (to tetrathionate)").ToHashSet();
        Assert.Equal(tested, ReferenceRows.Of("Chemistry.Doses", "dose_stoichiometry.csv").Select(row => row["chemical"]).ToHashSet());
    }

    [Fact]
    public void Thiosulfate_takes_from_an_eighth_to_the_whole_of_its_range()
    {
        // dose_stoichiometry.csv, both rows (computed).
        var rows = ReferenceRows.Of("Chemistry.Doses", "dose_stoichiometry.csv").Where(row => row["chemical"].StartsWith("sodium thiosulfate", StringComparison.Ordinal)).ToList();
        var range = Dechlorination.GramsPerGram(ProductKind.SodiumThiosulfate)!.Value;
        Assert.Equal(rows[0].Number("stoichiometric g per m3 per unit (pure)"), range.Low, 1e-4);
        Assert.Equal(rows[1].Number("stoichiometric g per m3 per unit (pure)"), range.High, 1e-3);
    }

    [Fact]
    public void Bicarbonate_by_stoichiometry_and_by_the_rounded_rule()
    {
        // DOSE-01 (computed) and DOSE-02 (10 CRR-NY 6-1.30, published): 1.401 lb, the rule says 1.5, within 8 %.
        var pounds = DoseAmount.ForChange(Product(ProductKind.SodiumBicarbonate), Measurand.TotalAlkalinity, 10, TenThousandGallons).Value / Pound;
        Assert.Equal(1.401, pounds, Row("DOSE-01").Number("tolerance"));
        Assert.InRange(1.5 / pounds, 1, 1.08);
    }

    [Fact]
    public void A_pint_of_acid_in_five_thousand_gallons()
    {
        // DOSE-03 (10 CRR-NY 6-1.30, published): lowers alkalinity by 12 mg/L, within 6 %; stoichiometry 12.5.
        var litres = 0.473176473;
        var change = DoseChanges.Of(Product(ProductKind.HydrochloricAcid, 31.45, 1.16).PerKilogram, litres * 1.16 / (5 * Gallon)).Alkalinity;
        Assert.Equal(-12.5, change, 0.06);
        Assert.InRange(-change / 12, 1, 1.06);
    }

    [Fact]
    public void Dry_acid_for_fifty_in_sixty_thousand_gallons()
    {
        // DOSE-04 (operators' training worksheet, published): the rule gives 63 lb; pure stoichiometry 60.1 lb.
        var pounds = DoseAmount.ForChange(Product(ProductKind.SodiumBisulfate), Measurand.TotalAlkalinity, -50, 6 * TenThousandGallons).Value / Pound;
        Assert.Equal(60.1, pounds, 0.1);
        Assert.Equal(63, 2.1 * 5 * 6, 1e-9);
    }

    [Fact]
    public void Field_figures_of_dechlorination_are_told_and_lie_where_stoichiometry_allows()
    {
        // DOSE-05 to DOSE-08 (field guide for mains, tables 7-2 and 7-5, published): kg per 100 m3 and mg/L, and 1.58 lb per 100,000 US gal from the same figure rounded.
        static double Kilograms(ProductKind kind) => 100 * Dechlorination.InTheField(kind)!.Value / 1000;
        Assert.Equal(double.Parse(Row("DOSE-06")["expected"].Split(' ')[0], CultureInfo.InvariantCulture), Kilograms(ProductKind.SodiumThiosulfate), 1e-9);
        Assert.Equal(double.Parse(Row("DOSE-07")["expected"].Split(' ')[0], CultureInfo.InvariantCulture), Kilograms(ProductKind.SodiumSulfite), 1e-9);
        Assert.Equal(double.Parse(Row("DOSE-08")["expected"].Split(' ')[0], CultureInfo.InvariantCulture), Kilograms(ProductKind.AscorbicAcid), 1e-9);
        Assert.Equal(1.58, Dechlorination.InTheField(ProductKind.SodiumThiosulfate)!.Value * 100 * Gallon / 1000 / Pound, 0.01);
        Assert.True(Dechlorination.GramsPerGram(ProductKind.SodiumThiosulfate)!.Value.Contains(1.9));
        Assert.Equal(0.178, 100 * Dechlorination.GramsPerGram(ProductKind.SodiumSulfite)!.Value.Low / 1000, 0.0005);
        foreach (var kind in (ProductKind[])[ProductKind.SodiumBisulfite, ProductKind.SodiumSulfite, ProductKind.AscorbicAcid])
            Assert.True(Dechlorination.InTheField(kind) >= Dechlorination.GramsPerGram(kind)!.Value.Low);
    }

    [Fact]
    public void Hypochlorite_by_trade_per_cent_in_litres()
    {
        // DOSE-13 (arithmetic): 12.5 % w/v, +3 mg/L in 450 m3 is 10.8 L, whatever the density.
        foreach (var density in (double?[])[null, 1.15, 1.25])
        {
            var hypo = Product(ProductKind.SodiumHypochlorite, 12.5, density, StrengthMeaning.Trade);
            Assert.Equal(10.8, DoseAmount.ForChange(hypo, Measurand.FreeChlorine, 3, 450).Value / hypo.KilogramsPerLitre!.Value, Row("DOSE-13").Number("tolerance"));
        }
    }

    [Fact]
    public void Calcium_hypochlorite_in_ounces() => Assert.Equal(
        // DOSE-14 (arithmetic).
        2.05, DoseAmount.ForChange(Product(ProductKind.CalciumHypochlorite, 65), Measurand.FreeChlorine, 1, TenThousandGallons).Value / Ounce, Row("DOSE-14").Number("tolerance"));

    [Theory]
    [InlineData(ProductKind.HydrochloricAcid, Measurand.TotalAlkalinity, 10, "dose.only_lowers")]
    [InlineData(ProductKind.SodiumBicarbonate, Measurand.TotalAlkalinity, -10, "dose.only_raises")]
    [InlineData(ProductKind.SodiumBicarbonate, Measurand.FreeChlorine, 1, "dose.not_for_this")]
    [InlineData(ProductKind.Monopersulfate, Measurand.FreeChlorine, 1, "dose.not_worked_out")]
    [InlineData(ProductKind.HydrochloricAcid, Measurand.Ph, -0.2, "dose.ph_needs_the_water")]
    [InlineData(ProductKind.SodiumBicarbonate, Measurand.TotalAlkalinity, 1e6, "input.outside_range")]
    public void What_a_product_cannot_do_is_an_answer_with_a_name(ProductKind kind, Measurand target, double change, string code) =>
        Assert.Equal(code, DoseAmount.ForChange(Product(kind, null), target, change, 100).Why!.Code);

    [Fact]
    public void A_dose_that_is_given_brings_the_change_it_was_worked_out_for()
    {
        (ProductKind, Measurand)[] all = [.. from kind in Enum.GetValues<ProductKind>() from target in ProductUse.Of(kind) where target != Measurand.Ph select (kind, target)];
        Gen.Select(Gen.Int[0, all.Length - 1].Select(i => all[i]), Gen.Double[0.1, 200], Gen.Double[1, 5000], Gen.Double[5, 60]).Sample((use, size, volume, percent) =>
        {
            var change = size * ProductUse.Direction(use.Item1, use.Item2);
            var product = Product(use.Item1, percent);
            var kilograms = DoseAmount.ForChange(product, use.Item2, change, volume).Value;
            Assert.True(kilograms > 0);
            Assert.Equal(change, DoseChanges.Of(product.PerKilogram, kilograms / volume).For(use.Item2)!.Value, 1e-9 * size);
        });
    }
}
