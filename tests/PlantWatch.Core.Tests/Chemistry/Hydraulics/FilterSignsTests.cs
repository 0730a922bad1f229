using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry.Hydraulics;

/// <summary>A loaded filter against what throttles elsewhere: Darcy's law (pressure in proportion to flow) and Darcy-Weisbach (to its square) are the two ends of an unchanged filter.</summary>
public sealed class FilterSignsTests
{
    [Theory]
    // At three quarters of the flow an unchanged filter of 40 kPa shows 22.5 (square) to 30 kPa (linear).
    [InlineData(22.5, FilterSign.AsClean)]
    [InlineData(30, FilterSign.AsClean)]
    [InlineData(38, FilterSign.InPart)]
    [InlineData(44, FilterSign.Loaded)]
    [InlineData(90, FilterSign.Loaded)]
    [InlineData(2, FilterSign.TakesNone)]
    public void Pressure_over_clean_at_less_flow_is_a_loaded_filter_and_pressure_that_falls_with_the_flow_is_none(double kilopascals, FilterSign sign) =>
        Assert.Equal(sign, FilterSigns.Of(kilopascals, clean: 40, flow: 90, cleanFlow: 120));

    [Fact]
    public void A_resistance_added_in_the_filter_is_told_from_one_added_behind_it_on_a_pump_with_a_curve()
    {
        // A pump of 20 m at no flow that loses head with the square of it, 12 m left at 100 m3/h; pipes and filter in series with it, worked out as flow where head meets loss.
        static (double Flow, double Filter) Works(double filter, double elsewhere)
        {
            var (low, high) = (0.0, 200.0);
            for (var i = 0; i < 100; i++)
            {
                var q = (low + high) / 2;
                (low, high) = 20 - (8e-4 * q * q) > (filter * q) + (elsewhere * q * q) ? (q, high) : (low, q);
            }

            return (low, filter * low * 9.81);
        }

        var (cleanFlow, clean) = Works(0.03, 9e-4);
        Assert.Equal(100, cleanFlow, 1.0);
        var (loadedFlow, loaded) = Works(0.09, 9e-4);
        var (shutFlow, shut) = Works(0.03, 19e-4);
        Assert.Equal(FilterSign.Loaded, FilterSigns.Of(loaded, clean, loadedFlow, cleanFlow));
        Assert.Equal(FilterSign.AsClean, FilterSigns.Of(shut, clean, shutFlow, cleanFlow));
        Assert.True(loadedFlow < 0.9 * cleanFlow && shutFlow < 0.9 * cleanFlow);
    }

    [Theory]
    [InlineData(30, 0, 90, 120)]
    [InlineData(30, 40, 0, 120)]
    [InlineData(30, 40, 90, 0)]
    [InlineData(double.NaN, 40, 90, 120)]
    public void Without_figures_there_is_no_sign(double kilopascals, double clean, double flow, double cleanFlow) => Assert.Equal(FilterSign.Unknown, FilterSigns.Of(kilopascals, clean, flow, cleanFlow));
}
