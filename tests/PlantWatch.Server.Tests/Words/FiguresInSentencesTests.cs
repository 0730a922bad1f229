using PlantWatch.Core.Reasons;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Words;

/// <summary>A sentence writes its figures as the trade does.</summary>
public sealed class FiguresInSentencesTests
{
    [Theory]
    [InlineData(7.6, 7.614, "pH", "pH went over the limit of 7.60: it read 7.61")]
    [InlineData(30, 31.26, "degC", "pH went over the limit of 30.0 °C: it read 31.3 °C")]
    [InlineData(820, 833.4, "mV", "pH went over the limit of 820 mV: it read 833 mV")]
    [InlineData(3, 3.5, "mg/L", "pH went over the limit of 3.00 mg/L: it read 3.50 mg/L")]
    [InlineData(200, 240, "mg/L", "pH went over the limit of 200 mg/L: it read 240 mg/L")]
    public void A_limit_and_a_reading_have_the_decimals_and_the_unit_that_people_write(double limit, double read, string unit, string expected) =>
        Assert.Equal(expected, Said("limit.above", "pH", read, limit, unit));

    [Fact]
    public void A_pressure_and_a_flow_have_no_digit_that_no_gauge_shows()
    {
        Assert.Equal("Filter 1: 71 kPa across it, 51 over clean; a wash is due at 50", Said("filter.pressure_risen", "Filter 1", 70.68, 50.68, 50, "kPa"));
        Assert.Equal("Flow is at 87.3 m³/h, under 150 m³/h", Said("circulation.low", "Flow", 87.346, 150.4, "m3/h"));
    }

    [Fact]
    public void A_figure_that_would_read_like_what_it_is_held_against_has_a_decimal_more_and_so_has_the_other()
    {
        Assert.Equal("Flow is at 103.6 m³/h, under 104.2 m³/h", Said("circulation.low", "Flow", 103.62, 104.25, "m3/h"));
        Assert.Equal("ORP went over the limit of 720.0 mV: it read 720.4 mV", Said("limit.above", "ORP", 720.4, 720, "mV"));
        Assert.Equal("pH went over the limit of 7.600: it read 7.604", Said("limit.above", "pH", 7.604, 7.6, "pH"));
        Assert.Equal("pH went over the limit of 7.60: it read 7.60", Said("limit.above", "pH", 7.6, 7.6, "pH"));
        Assert.Equal("pH went over the limit of 7.60: it read 7.60", Said("limit.above", "pH", 7.60004, 7.6, "pH"));
    }

    [Theory]
    [InlineData(95, "95 seconds"), InlineData(1500, "25 minutes"), InlineData(7199.7, "2 hours"), InlineData(9000, "2.5 hours"), InlineData(90_000, "25 hours"), InlineData(200_000, "2.3 days"), InlineData(1, "1 second")]
    public void A_length_of_time_is_said_in_the_unit_that_people_would_use(double seconds, string expected) =>
        Assert.Equal($"The value has not moved for {expected} although it used to", Said("signal.stuck", seconds));

    [Fact]
    public void A_difference_shows_its_sign_and_an_expanded_uncertainty_stands_after_plus_minus()
    {
        Assert.Equal("Probe and test agree: \u22120.04 apart, within ± 0.17", Said("trust.agrees", -0.04, 0.17, "pH"));
        Assert.Equal("Probe and test agree: +0.1 °C apart, within ± 0.5", Said("trust.agrees", 0.1, 0.48, "degC"));
    }

    [Fact]
    public void Nothing_is_neither_plus_nor_minus() =>
        Assert.Equal("Probe and test agree: 0.00 apart, within ± 0.17", Said("trust.agrees", -0.001, 0.17, "pH"));

    [Fact]
    public void An_offset_of_a_calibration_has_a_true_minus() =>
        Assert.Equal("The electrode is sound: slope 99.7 %, offset \u22121 mV", Said("bench.sound", 99.7, -0.8));

    [Fact]
    public void A_forecast_gives_no_digits_of_a_rate_that_is_not_known() =>
        Assert.Equal("It may as well not drift at all", Said("forecast.rate_unsure", -2.568, 38.445));

    [Fact]
    public void An_input_out_of_range_is_named_with_the_range_and_with_its_unit_if_it_has_one()
    {
        Assert.Equal("Flow is 0 m³/h; this is worked out from 0.01 to 50000 m³/h", Said("input.outside_range", "input_flow", 0, 0.01, 50_000, "m3/h"));
        Assert.Equal("Number of tablets is 0; this is worked out from 1 to 100", Said("input.outside_range", "input_tablets", 0, 1, 100, ""));
        Assert.Equal("Flow is not a number; this is worked out from 0.01 to 50000 m³/h", Said("input.outside_range", "input_flow", "input_no_number", 0.01, 50_000, "m3/h"));
    }

    // The spaces before a unit and after the plus-minus do not break; to the eye they are spaces.
    private static string Said(string code, params ReadOnlySpan<Fact> facts) => Wording.English.Text(Reason.Of(code, facts)).Replace('\u00a0', ' ');
}
