using System.Globalization;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Chemistry.Methods;

/// <summary>The check values of methods_values.csv, with the source and provenance that stand there.</summary>
public class MethodCheckValues
{
    [Fact]
    public void Tablets_in_50_mL() => Meets("TEST-01", TabletCount.Result(3, 50).Value, 1e-9);

    [Fact]
    public void Tablets_in_100_mL_give_90_where_the_page_prints_80()
    {
        // (5 x 20) - 10 = 90 by the page's own formula; its 80 is an arithmetic slip and is not met.
        Assert.Equal(90, TabletCount.Result(5, 100).Value);
        Assert.Contains("5 tablets give 90", Row("TEST-02")["expected"], StringComparison.Ordinal);
    }

    [Fact]
    public void Tablets_in_any_sample()
    {
        Assert.Equal("(n*2000/V) - (1000/V)", Row("TEST-03")["expected"]);
        foreach (var (n, v) in new[] { (1, 10.0), (4, 25), (7, 75), (12, 200) })
            Assert.Equal((n * 2000 / v) - (1000 / v), TabletCount.Result(n, v).Value, 1e-9);
    }

    [Fact]
    public void A_sample_diluted_one_and_four()
    {
        var factor = SampleDilution.Factor(1, 4).Value;
        Assert.Equal(5, factor);
        Meets("TEST-05", SampleDilution.Undiluted(new(1.84, 0.05), factor).Value, Row("TEST-05").Number("tolerance"));
    }

    [Fact]
    public void The_doubt_of_a_reading_grows_with_the_factor() =>
        // GUM without the doubt of the dilution step itself, as the row has it.
        Meets("TEST-06", SampleDilution.Undiluted(new(1.84, 0.05), 5, stepRelative: 0).StandardUncertainty, 1e-9);

    [Fact]
    public void Ranges_and_figures_of_dpd_and_phenol_red_are_those_of_their_sources()
    {
        Assert.Contains("above about 10 mg/L", Row("TEST-07")["inputs"], StringComparison.Ordinal);
        Assert.Equal(10, Dpd.Bleaches);
        Assert.StartsWith("0.03-5 mg/L", Row("TEST-08")["expected"], StringComparison.Ordinal);
        Assert.Equal(new ValueRange(0.03, 5), Dpd.Range);
        Assert.StartsWith("< 0.1 mg/L", Row("TEST-09")["expected"], StringComparison.Ordinal);
        Assert.Equal(0.1, Dpd.MonochloramineAsFree * 3, 1e-12);
        Assert.StartsWith("pH 6.8-8.4", Row("TEST-11")["expected"], StringComparison.Ordinal);
        Assert.Equal(new ValueRange(6.8, 8.4), PhenolRed.Range);
        Assert.Contains("above about 10-15", Row("TEST-12")["quantity"], StringComparison.Ordinal);
        Assert.Equal(10, PhenolRed.PurpleFromChlorine);
    }

    [Fact]
    public void No_test_is_claimed_to_be_finer_than_in_ideal_hands()
    {
        // TEST-10: s = 0.05 at 5.05 mg/L, one laboratory, one operator.
        Assert.Equal("s = 0.05 mg/L", Row("TEST-10")["expected"]);
        Assert.True(MethodUncertainty.Of(new(Measurand.FreeChlorine, 5.05, TestMethod.Photometer)).StandardUncertainty >= 0.05);
    }

    [Theory]
    [InlineData("PR-01", 0)]
    [InlineData("PR-02", 20)]
    [InlineData("PR-03", 25)]
    [InlineData("PR-04", 28)]
    [InlineData("PR-05", 40)]
    public void Slope_of_a_ph_electrode(string id, double celsius) => Meets(id, Nernst.Slope(celsius), Row(id).Number("tolerance"));

    [Fact]
    public void Two_buffers_give_slope_and_offset()
    {
        // PR-07: slope 57.89 mV/pH = 97.86 %; offset -4.2 mV, within 0.02.
        var electrode = PhElectrode.FromBuffers((7.00, -4.2), (4.01, 168.9), 25);
        Assert.Equal(97.86, electrode.SlopePercent, 0.02);
        Assert.Equal(57.89, electrode.SlopePercent / 100 * Nernst.Slope(25), 0.02);
        Assert.Equal(-4.2, electrode.OffsetMillivolts, 0.02);
        Assert.True(electrode.IsSound);
    }

    [Fact]
    public void Ph_of_a_reading_with_temperature_compensation() => Meets("PR-08", new PhElectrode(-4.2, 97.86).Ph(-25.0, 28).Value, Row("PR-08").Number("tolerance"));

    [Fact]
    public void Error_of_a_meter_left_at_25_degrees() => Meets("PR-09", PhElectrode.ErrorUncompensated(7.5, 35), Row("PR-09").Number("tolerance"));

    [Theory]
    [InlineData(30, 85, true)]
    [InlineData(-30, 105, true)]
    [InlineData(30.1, 95, false)]
    [InlineData(0, 84.9, false)]
    public void Limits_of_a_sound_electrode(double offset, double slope, bool sound)
    {
        Assert.Equal("|offset| <= 30 mV; slope 85-105 % (warn 90 %)", Row("PR-10")["expected"]);
        Assert.Equal(sound, new PhElectrode(offset, slope).IsSound);
        Assert.Equal(90, PhElectrode.SlopeWearsOut);
    }

    [Fact]
    public void Uncertainty_of_a_stated_limit_of_error() => Meets("ST-23", Rectangular.OfHalfWidth(0.10), Row("ST-23").Number("tolerance"));

    [Fact]
    public void Two_readings_may_differ_by_their_repeatability_limit()
    {
        // ST-25 (from memory): r = 2.8 s_r; s_r 0.07 gives 0.196. Combined chlorine rejects a pair whose free lies above its total by more; 1.96 sqrt 2 is 2.77 of it.
        var row = Row("ST-25");
        var limit = CombinedCalculation.RepeatabilityLimit(0.07);
        Assert.Equal(row.Number("expected"), limit, 0.0025);
    }

    [Theory]
    [InlineData("dH", 0)]
    [InlineData("fH", 1)]
    [InlineData("Clark", 2)]
    public void Degrees_of_hardness_in_milligrams(string unit, int which)
    {
        Assert.True(ReadingUnits.TryScale(Measurand.CalciumHardness, unit, out var scale));
        Assert.Equal(double.Parse(Row("DOSE-25")["expected"].Split('/')[which], CultureInfo.InvariantCulture), scale.Apply(1), 0.001);
        Assert.Contains(unit, ReadingUnits.Of(Measurand.CalciumHardness));
    }

    [Fact]
    public void Acid_capacity_in_milligrams_as_calcium_carbonate()
    {
        Assert.True(ReadingUnits.TryScale(Measurand.TotalAlkalinity, "mmol/L", out var scale));
        Meets("DOSE-26", scale.Apply(0.7), Row("DOSE-26").Number("tolerance"));
    }

    [Fact]
    public void Every_row_has_its_test() => Assert.Equal(
        ["DOSE-25", "DOSE-26", "PR-01", "PR-02", "PR-03", "PR-04", "PR-05", "PR-07", "PR-08", "PR-09", "PR-10", "ST-23", "ST-25",
            "TEST-01", "TEST-02", "TEST-03", "TEST-05", "TEST-06", "TEST-07", "TEST-08", "TEST-09", "TEST-10", "TEST-11", "TEST-12"],
        ReferenceRows.Of("Chemistry", "methods_values.csv").Select(row => row["id"]).Order(StringComparer.Ordinal));

    private static Dictionary<string, string> Row(string id) => ReferenceRows.Of("Chemistry", "methods_values.csv").Single(row => row["id"] == id);

    // The last number of the cell's first figure or sum: "(3*40)-20 = 100", "9.20", "0.25 mg/L", "35.0 mg/L CaCO3".
    private static void Meets(string id, double value, double tolerance)
    {
        var cell = Row(id)["expected"];
        var first = cell.Split('=')[^1].Trim().Split(' ')[0];
        Assert.Equal(double.Parse(first, CultureInfo.InvariantCulture), value, tolerance);
    }
}
