using CsCheck;
using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry.Hydraulics;

public class TurnoverTests
{
    [Fact]
    public void More_turnovers_clean_more_and_never_all_of_it() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0.01, 1], Gen.Double[0.01, 1]).Sample((turnovers, more, efficiency) =>
        {
            var (few, many) = (Turnover.PartPassed(turnovers, efficiency).Value, Turnover.PartPassed(turnovers + more, efficiency).Value);
            Assert.InRange(few, 0, 1);
            Assert.True(many > few && many < 1);
        });

    [Fact]
    public void Turnovers_until_a_part_is_clean_are_the_law_backwards() =>
        Gen.Select(Gen.Double[0, 0.9999], Gen.Double[0.01, 1]).Sample((part, efficiency) =>
        {
            var turnovers = Turnover.Until(part, efficiency).Value;
            Assert.Equal(part, Turnover.PartPassed(Math.Min(turnovers, 1000), efficiency).Value, 1e-9);
        });

    [Fact]
    public void Flow_and_turnover_are_two_sides_of_one_thing() => Assert.Equal(4, Turnover.Hours(450, Turnover.Flow(450, 4).Value).Value, 1e-12);

    [Fact]
    public void A_retest_waits_for_one_turnover_and_even_water_for_three()
    {
        Assert.Equal(4, MixingTime.ToRetest(4).Value);
        Assert.Equal(3.0, MixingTime.UntilEven(4).Value / 4, 0.005);
    }

    [Theory]
    [InlineData(450, 0, "input_flow", 0.01, "m3/h")]
    [InlineData(450, double.NaN, "input_flow", 0.01, "m3/h")]
    [InlineData(-1, 150, "input_volume", 0.1, "m3")]
    public void Out_of_range_names_the_input_and_the_range(double volume, double flow, string input, double low, string unit)
    {
        var figure = Turnover.Hours(volume, flow);
        Assert.False(figure.IsKnown);
        Assert.Equal("input.outside_range", figure.Why!.Code);
        Assert.Equal((input, low, unit), (figure.Why.Facts[0].Text, figure.Why.Facts[2].Number, figure.Why.Facts[4].Text));
        Assert.Throws<InvalidOperationException>(() => figure.Value);
    }

    [Fact]
    public void The_default_figure_was_never_computed() => Assert.Throws<InvalidOperationException>(() => default(Figure).Value);

    [Theory]
    [InlineData(8, FilterRateKind.Low)]
    [InlineData(10.1, FilterRateKind.Medium)]
    [InlineData(25, FilterRateKind.Medium)]
    [InlineData(40, FilterRateKind.High)]
    [InlineData(51, FilterRateKind.TooHigh)]
    [InlineData(0, FilterRateKind.Unknown)]
    public void Filter_rates_have_the_names_of_the_trade(double metresPerHour, FilterRateKind kind) => Assert.Equal(kind, FilterRate.Kind(metresPerHour));
}
