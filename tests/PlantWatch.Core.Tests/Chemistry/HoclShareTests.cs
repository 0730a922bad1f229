using System.Globalization;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

public class HoclShareTests
{
    [Fact]
    public void Table_of_shares_is_met_to_its_printed_digits_inside_the_range_and_refused_outside()
    {
        var compared = 0;
        foreach (var row in ReferenceRows.Of("Chemistry", "hocl_fraction.csv"))
            foreach (var (column, printed) in row.Where(cell => cell.Key.StartsWith("pct_HOCl_pH", StringComparison.Ordinal)))
            {
                var ph = double.Parse(column["pct_HOCl_pH".Length..], CultureInfo.InvariantCulture);
                var known = HoclShare.TryOf(Ph.From(ph), Celsius.From(row.Number("T_C")), out var share);
                Assert.Equal(row.Number("T_C") is >= 5 and <= 35, known);
                if (!known) continue;
                // Two decimals of a per cent are printed.
                Assert.Equal(double.Parse(printed, CultureInfo.InvariantCulture), 100 * share, 0.0051);
                compared++;
            }

        Assert.True(compared > 350);
    }

    [Theory]
    [InlineData("CL-05", 6.5, 20)]
    [InlineData("CL-06", 7.0, 25)]
    [InlineData("CL-07", 7.2, 27)]
    [InlineData("CL-08", 7.5, 25)]
    [InlineData("CL-09", 7.5, 28)]
    [InlineData("CL-10", 7.8, 30)]
    [InlineData("CL-11", 8.0, 20)]
    [InlineData("CL-12", 7.4, 35)]
    [InlineData("CL-13", 7.6, 10)]
    public void Check_values_are_met(string id, double ph, double celsius)
    {
        var row = ReferenceRows.Of("Chemistry", "check_values.csv").Single(row => row["id"] == id);
        Assert.True(HoclShare.TryOf(Ph.From(ph), Celsius.From(celsius), out var share));
        Assert.Equal(row.Number("expected"), 100 * share, row.Number("tolerance"));
    }

    [Fact]
    public void Half_the_chlorine_is_hocl_at_the_pKa_that_an_independent_source_gives()
    {
        // CL-02: 7.54 at 25 degC, O'Brien, Morris and Butler 1974 as listed by US EPA ORD (published).
        Assert.True(HoclShare.TryOf(Ph.From(7.54), Celsius.From(25), out var share));
        Assert.Equal(0.5, share, 0.006);
    }

    [Theory]
    [InlineData(4.9)]
    [InlineData(35.1)]
    public void Outside_five_to_thirty_five_degrees_there_is_an_answer_but_no_number(double celsius)
    {
        var result = HoclShare.Of(Ph.From(7.4), Celsius.From(celsius));
        Assert.Equal(ShareFailure.TemperatureOutsideRange, result.Failure);
        Assert.Throws<InvalidOperationException>(() => result.Share);
        Assert.Equal("hocl.temperature_outside_range", result.Saying()!.Code);
    }

    [Fact]
    public void The_default_share_was_never_computed()
    {
        Assert.False(default(ShareResult).IsKnown);
        Assert.Equal(ShareFailure.NotComputed, default(ShareResult).Failure);
    }

    [Fact]
    public void Share_always_lies_between_none_and_all_and_falls_with_ph() =>
        Gen.Select(Gen.Double[0, 13.9], Gen.Double[0.001, 0.1], Gen.Double[5, 35]).Sample((ph, step, celsius) =>
        {
            Assert.True(HoclShare.TryOf(Ph.From(ph), Celsius.From(celsius), out var low));
            Assert.True(HoclShare.TryOf(Ph.From(ph + step), Celsius.From(celsius), out var high));
            Assert.InRange(low, 0, 1);
            Assert.True(high < low);
        });
}
