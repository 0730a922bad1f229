using CsCheck;
using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry;

public class HandbookIndexTests
{
    private static Water Water(double ph, double celsius, double alkalinity, double calcium, double solids) => Waters.Of(ph, celsius, alkalinity, calcium, solids);

    private static double FromF(double fahrenheit) => (fahrenheit - 32) * 5 / 9;

    [Theory]
    // 10 CRR-NY 6-1.30, worked example (published): corrosive.
    [InlineData("LSI-T01", 7.8, 68, 20, 140, 500, BalanceWord.Corrosive)]
    // Operators' training worksheet, three problems, two without slip (published).
    [InlineData("LSI-T05", 7.0, 76, 50, 200, 500, BalanceWord.Corrosive)]
    [InlineData("LSI-T06", 7.6, 84, 75, 300, 500, BalanceWord.Balanced)]
    // Montana, spa chapter, Table 7 (computed): the constant by dissolved solids.
    [InlineData("LSI-T08", 7.5, 80, 100, 250, 1500, BalanceWord.Balanced)]
    public void Worked_examples_of_the_sources_are_met(string id, double ph, double fahrenheit, double alkalinity, double calcium, double solids, BalanceWord word)
    {
        var row = ReferenceRows.Of("Chemistry", "check_values.csv").Single(row => row["id"] == id);
        var result = HandbookIndex.Of(Water(ph, FromF(fahrenheit), alkalinity, calcium, solids));
        Assert.Equal(row.Number("expected"), result.Value, row.Number("tolerance") + 1e-9);
        Assert.Equal(word, result.Word);
        Assert.Equal(0.3, result.Claim);
    }

    [Fact]
    public void Every_row_of_the_published_tables_is_met()
    {
        // Base water: 76 degF (0.6), calcium 100 (1.6), alkalinity 100 (2.0), solids under 1000 (12.1), pH 7.5: index -0.4.
        foreach (var row in ReferenceRows.Of("Chemistry", "lsi_factor_table.csv"))
        {
            if (row["table"] == "K") continue;
            var (x, factor) = (row.Number("x"), row.Number("factor"));
            var (water, expected) = row["table"] switch
            {
                "TF" => (Water(7.5, FromF(x), 100, 100, 500), -0.4 + factor - 0.6),
                "CF" => (Water(7.5, FromF(76), 100, x, 500), -0.4 + factor - 1.6),
                _ => (Water(7.5, FromF(76), x, 100, 500), -0.4 + factor - 2.0),
            };
            Assert.Equal(expected, HandbookIndex.Of(water).Value, 1e-9);
        }
    }

    [Theory]
    // LSI-T02 to T04 (published, the New York example): factors between rows by straight line.
    [InlineData("LSI-T02")]
    [InlineData("LSI-T03")]
    [InlineData("LSI-T04")]
    public void Factors_between_rows_lie_on_a_straight_line(string id)
    {
        var row = ReferenceRows.Of("Chemistry", "check_values.csv").Single(row => row["id"] == id);
        var factor = id switch
        {
            "LSI-T02" => HandbookIndex.Of(Water(7.5, FromF(68), 100, 100, 500)).Value + 0.4 + 0.6,
            "LSI-T03" => HandbookIndex.Of(Water(7.5, FromF(76), 100, 140, 500)).Value + 0.4 + 1.6,
            _ => HandbookIndex.Of(Water(7.5, FromF(76), 20, 100, 500)).Value + 0.4 + 2.0,
        };
        Assert.Equal(row.Number("expected"), factor, row.Number("tolerance"));
    }

    [Fact]
    public void Against_the_speciated_model_the_method_is_as_far_off_as_it_says()
    {
        var errors = ReferenceRows.Of("Chemistry", "phreeqc_grid.csv")
            .Select(row => HandbookIndex.Of(Water(row.Number("pH"), row.Number("T_C"), row.Number("TA_mgL_CaCO3"), row.Number("CH_mgL_CaCO3"), row.Number("TDS_mgL"))).Value
                - row.Number("SI_calcite"))
            .ToArray();
        var mean = errors.Average();
        // Mean -0.015, standard deviation 0.098, from -0.286 to +0.281 over these 200 waters (computed independently).
        Assert.Equal(200, errors.Length);
        Assert.Equal(-0.015, mean, 0.0005);
        Assert.Equal(0.098, Math.Sqrt(errors.Sum(e => (e - mean) * (e - mean)) / 199), 0.0006);
        Assert.All(errors, e => Assert.True(Math.Abs(e) <= HandbookIndex.Claim));
    }

    [Theory]
    [InlineData(-1, 100, 200, "input_temperature")]
    [InlineData(27, 4, 200, "input_carbonate_alkalinity")]
    [InlineData(27, 1001, 200, "input_carbonate_alkalinity")]
    [InlineData(27, 100, 4.9, "input_calcium")]
    public void An_input_outside_its_table_is_named_and_nothing_is_extrapolated(double celsius, double alkalinity, double calcium, string input)
    {
        var result = HandbookIndex.Of(Water(7.5, celsius, alkalinity, calcium, 800));
        Assert.False(result.IsKnown);
        Assert.Equal(BalanceWord.Unknown, result.Word);
        Assert.Equal(("input.outside_range", input), (result.Why!.Code, result.Why.Facts[0].Text));
    }

    [Theory]
    // 76 degF, alkalinity 100, calcium 100: index = pH - 7.9.
    [InlineData(7.39, BalanceWord.Corrosive)]
    [InlineData(7.40, BalanceWord.Balanced)]
    [InlineData(8.40, BalanceWord.Balanced)]
    [InlineData(8.41, BalanceWord.ScaleForming)]
    public void Half_a_unit_either_way_is_balanced(double ph, BalanceWord word) =>
        Assert.Equal(word, HandbookIndex.Of(Water(ph, FromF(76), 100, 100, 800)).Word);

    [Fact]
    public void Index_rises_with_everything_that_deposits_lime() =>
        Gen.Select(Gen.Double[6.5, 8.5], Gen.Double[0.1, 53], Gen.Double[5, 990], Gen.Double[5, 990], Gen.Double[0.01, 0.2]).Sample((ph, celsius, alkalinity, calcium, step) =>
        {
            var index = HandbookIndex.Of(Water(ph, celsius, alkalinity, calcium, 800)).Value;
            Assert.True(HandbookIndex.Of(Water(ph + step, celsius, alkalinity, calcium, 800)).Value > index);
            Assert.True(HandbookIndex.Of(Water(ph, celsius + step, alkalinity, calcium, 800)).Value > index);
            Assert.True(HandbookIndex.Of(Water(ph, celsius, alkalinity + step, calcium, 800)).Value > index);
            Assert.True(HandbookIndex.Of(Water(ph, celsius, alkalinity, calcium + step, 800)).Value > index);
            Assert.True(HandbookIndex.Of(Water(ph, celsius, alkalinity, calcium, 5000)).Value < index);
        });
}
