using CsCheck;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Readings;

public class CheckMethodUncertaintyTests
{
    private static double U(Measurand measurand, double value, TestMethod method, double dilution = 1) =>
        MethodUncertainty.Of(new(measurand, value, method, Censoring.None, dilution)).StandardUncertainty;

    [Fact]
    public void Phenol_red_by_photometer_lies_between_six_and_ten_hundredths() =>
        Assert.InRange(U(Measurand.Ph, 7.4, TestMethod.Photometer), 0.06, 0.10);

    [Fact]
    public void A_comparator_is_coarser_than_a_photometer_and_a_meter_finer()
    {
        Assert.True(U(Measurand.Ph, 7.4, TestMethod.Comparator) > U(Measurand.Ph, 7.4, TestMethod.Photometer));
        Assert.True(U(Measurand.Ph, 7.4, TestMethod.Meter) < U(Measurand.Ph, 7.4, TestMethod.Photometer));
    }

    [Theory]
    // Common practice: the larger of 0.05 mg/L and 5 % of the reading.
    [InlineData(0.4, 0.05)]
    [InlineData(1.0, 0.05)]
    [InlineData(3.0, 0.15)]
    public void Dpd_is_good_to_five_hundredths_or_five_per_cent(double value, double u) =>
        Assert.Equal(u, U(Measurand.FreeChlorine, value, TestMethod.Photometer), 1e-9);

    [Fact]
    public void Dilution_multiplies_the_error_of_the_reading()
    {
        // 0.8 read in a tenfold dilution: 10 x 0.05, and 2 % for the dilution itself.
        Assert.Equal(Math.Sqrt((0.5 * 0.5) + (0.16 * 0.16)), U(Measurand.FreeChlorine, 8, TestMethod.Photometer, 10), 1e-9);
        Assert.True(U(Measurand.FreeChlorine, 4, TestMethod.Photometer, 10) > U(Measurand.FreeChlorine, 4, TestMethod.Photometer));
    }

    [Fact]
    public void A_tablet_count_is_no_better_than_its_step_of_forty()
    {
        // Rectangular within one step (GUM): 40 / sqrt(12) = 11.5; the reagent's own part comes on top.
        var parts = MethodUncertainty.Parts(new(Measurand.TotalAlkalinity, 100, TestMethod.TabletCount));
        Assert.Equal(11.547, parts.Random, 0.001);
        Assert.True(parts.Total > parts.Random);
    }

    [Fact]
    public void A_bound_is_no_number_and_has_no_uncertainty() =>
        Assert.False(MethodUncertainty.Of(new(Measurand.Ph, 6.8, TestMethod.Photometer, Censoring.Below)).IsKnown);

    [Fact]
    public void A_method_that_is_not_stated_is_never_finer_than_a_stated_one() =>
        Gen.Select(Gen.OneOf(new[] { Measurand.Ph, Measurand.FreeChlorine, Measurand.TotalChlorine, Measurand.TotalAlkalinity, Measurand.Temperature }.Select(Gen.Const).ToArray()),
            Gen.OneOf(Gen.Const(TestMethod.Photometer), Gen.Const(TestMethod.Meter)), Gen.Double[0.1, 10]).Sample((measurand, method, value) =>
            Assert.True(U(measurand, value, TestMethod.Unknown) >= U(measurand, value, method)));

    [Fact]
    public void Every_possible_number_has_a_finite_uncertainty() =>
        Gen.Select(Gen.Enum<Measurand>(), Gen.Enum<TestMethod>(), Gen.Double[0, 1], Gen.Double[1, 100]).Sample((measurand, method, part, dilution) =>
        {
            var range = measurand.Possible();
            var result = new TestResult(measurand, range.Low + (part * (range.High - range.Low)), method, Censoring.None, dilution);
            var parts = MethodUncertainty.Parts(result);
            Assert.True(double.IsFinite(parts.Total) && parts.Total > 0);
        });

    [Fact]
    public void A_stated_step_takes_the_place_of_the_usual_one()
    {
        // 100 mL: 20 mg/L a tablet; a comparator of 0.1 pH is read to half of it; an instrument that shows tens adds step/sqrt(12) to its noise.
        Assert.Equal(20 / Math.Sqrt(12), MethodUncertainty.Parts(new(Measurand.TotalAlkalinity, 90, TestMethod.TabletCount, Step: 20)).Random, 1e-9);
        Assert.Equal(0.05, MethodUncertainty.Parts(new(Measurand.Ph, 7.4, TestMethod.Comparator, Step: 0.1)).Random, 1e-9);
        Assert.Equal(Math.Sqrt((10 * 10) + (100.0 / 12)), MethodUncertainty.Parts(new(Measurand.TotalAlkalinity, 100, TestMethod.Photometer, Step: 10)).Random, 1e-9);
    }

    [Fact]
    public void The_usual_tablet_count_is_that_of_fifty_millilitres() =>
        Assert.Equal(
            MethodUncertainty.Parts(new(Measurand.TotalAlkalinity, 100, TestMethod.TabletCount, Step: 40)), MethodUncertainty.Parts(new(Measurand.TotalAlkalinity, 100, TestMethod.TabletCount)));
}
