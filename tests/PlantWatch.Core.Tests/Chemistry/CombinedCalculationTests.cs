using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Chemistry;

public class CombinedCalculationTests
{
    [Fact]
    public void Total_less_free_of_one_sample()
    {
        // CL-30 (definition, computed): total 3.2, free 2.4.
        var result = CombinedCalculation.Of(TotalChlorine.From(3.2), 0.16, FreeChlorine.From(2.4), 0.12);
        Assert.Equal(0.8, result.Value.MilligramsPerLitre, 1e-9);
        Assert.Equal(0.2, result.StandardUncertainty, 1e-9);
        Assert.Null(result.Saying());
    }

    [Fact]
    public void Free_above_total_within_repeatability_is_zero_with_a_note()
    {
        // CL-31 (common practice): total 2.0, free 2.1, repeatability limit 0.2.
        var result = CombinedCalculation.Of(TotalChlorine.From(2.0), FreeChlorine.From(2.1), 0.1, 0.2);
        Assert.Equal(0, result.Value.MilligramsPerLitre);
        Assert.Equal("combined.zero_within_repeatability", result.Saying()!.Code);
    }

    [Theory]
    [InlineData(2.0, 2.2, true)]
    [InlineData(2.0, 2.21, false)]
    public void The_repeatability_limit_itself_is_still_within(double total, double free, bool known) =>
        Assert.Equal(known, CombinedCalculation.Of(TotalChlorine.From(total), FreeChlorine.From(free), 0.1, 0.2).IsKnown);

    [Fact]
    public void Free_well_above_total_rejects_the_pair()
    {
        var result = CombinedCalculation.Of(TotalChlorine.From(1.0), 0.05, FreeChlorine.From(1.5), 0.075);
        Assert.False(result.IsKnown);
        Assert.Equal("combined.free_above_total", result.Saying()!.Code);
        Assert.Throws<InvalidOperationException>(() => result.Value);
    }

    [Fact]
    public void A_check_with_both_results_has_a_combined_chlorine_with_the_uncertainty_of_its_methods()
    {
        var check = Checks.Of(new(Measurand.FreeChlorine, 1.0, TestMethod.Photometer), new(Measurand.TotalChlorine, 1.4, TestMethod.Photometer));
        Assert.True(CombinedOfCheck.TryOf(check, out var combined));
        Assert.Equal(0.4, combined.Value.MilligramsPerLitre, 1e-9);
        Assert.Equal(Math.Sqrt((0.05 * 0.05) + (0.07 * 0.07)), combined.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void A_bound_is_no_number_to_subtract() =>
        Assert.False(CombinedOfCheck.TryOf(
            Checks.Of(new(Measurand.FreeChlorine, 0.03, TestMethod.Photometer, Censoring.Below), new(Measurand.TotalChlorine, 0.4, TestMethod.Photometer)), out _));

    [Fact]
    public void Combined_is_never_negative() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 200], Gen.Double[0.01, 5]).Sample((total, free, u) =>
        {
            var result = CombinedCalculation.Of(TotalChlorine.From(total), u, FreeChlorine.From(free), u);
            Assert.True(!result.IsKnown || result.Value.MilligramsPerLitre >= 0);
            Assert.Equal(total >= free, result.Remark == CombinedRemark.None);
        });
}
