using CsCheck;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>When a probe will want service.</summary>
public sealed class ServiceForecastTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 1, 12);

    [Fact]
    public void A_probe_that_drifts_a_tenth_a_month_reaches_the_limit_of_0_15_after_45_days()
    {
        // The median drift of river probes, 0.10 pH a month (Logan River Observatory, Jones et al. 2022, doi 10.1016/j.envsoft.2022.105364).
        var outlook = ServiceForecast.ByBias(new(0, 0.001), new(0.1 / 30, 1e-6), 0.15, 0, Noon);
        Assert.Equal(45, Days(outlook.Likely), 3);
        Assert.Equal("forecast.by_rate", outlook.Why.Code);
    }

    [Fact]
    public void The_interval_is_where_the_limit_is_met_by_twice_the_uncertainty_on_either_side()
    {
        // 0.01 t +- 2 x 0.001 t = 0.12 at 10, 12 and 15 days; the uncertainty of the start is as good as none.
        var outlook = ServiceForecast.ByBias(new(0, 1e-9), new(0.01, 0.001), 0.12, 0, Noon);
        Assert.Equal((10.0, 12.0, 15.0), (Math.Round(Days(outlook.Earliest), 3), Math.Round(Days(outlook.Likely), 3), Math.Round(Days(outlook.Latest), 3)));
    }

    [Fact]
    public void A_probe_that_only_wanders_has_an_earliest_day_and_no_likely_one()
    {
        // A walk of 0.148 a month is 0.000730 a day squared: 2 x sqrt(0.000730 t) = 0.3 after 30.8 days.
        var outlook = ServiceForecast.ByBias(new(0, 1e-9), default, 0.3, 0.148 * 0.148 / 30, Noon);
        Assert.Equal(30.8, Days(outlook.Earliest), 1);
        Assert.Null(outlook.Likely);
        Assert.Equal("forecast.no_rate", outlook.Why.Code);
    }

    [Fact]
    public void A_rate_that_cannot_be_told_from_none_says_so() =>
        Assert.Equal("forecast.rate_unsure", ServiceForecast.ByBias(new(0.05, 0.02), new(0.002, 0.002), 0.15, 0, Noon).Why.Code);

    [Fact]
    public void A_drift_back_through_nought_counts_from_the_other_side()
    {
        var outlook = ServiceForecast.ByBias(new(0.1, 1e-6), new(-0.01, 1e-9), 0.15, 0, Noon);
        Assert.Equal(25, Days(outlook.Likely), 3);
    }

    [Fact]
    public void A_limit_that_is_reached_already_is_now()
    {
        var outlook = ServiceForecast.ByBias(new(-0.2, 0.02), new(0, 0.001), 0.15, 0, Noon);
        Assert.Equal(("forecast.reached", Noon, Noon), (outlook.Why.Code, outlook.Earliest!.Value, outlook.Likely!.Value));
    }

    [Fact]
    public void Nothing_is_foretold_without_a_bias_or_beyond_the_horizon()
    {
        Assert.Equal("forecast.too_little_known", ServiceForecast.ByBias(default, new(0.1, 0.01), 0.15, 0, Noon).Why.Code);
        Assert.Equal("forecast.too_little_known", ServiceForecast.ByBias(new(0, 0.1), default, double.NaN, 0, Noon).Why.Code);
        Assert.Equal("forecast.not_in_sight", ServiceForecast.ByBias(new(0, 0.001), new(0.0001, 0.00001), 0.15, 0, Noon).Why.Code);
    }

    [Fact]
    public void A_slope_that_falls_by_half_a_percent_a_month_leaves_85_percent_after_120_days_from_87() =>
        Assert.Equal(120, Days(ServiceForecast.BySlope(new(0.87, 0.001), new(-0.005 / 30, 1e-6), new(0.85, 1.05), Noon).Likely), 3);

    [Fact]
    public void Earliest_likely_and_latest_follow_each_other_whatever_is_put_in() =>
        Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[0.001, 0.2], Gen.Double[-0.02, 0.02], Gen.Double[0.0001, 0.01], Gen.Double[0, 0.001]).Sample((bias, u, drift, ud, wander) =>
        {
            var outlook = ServiceForecast.ByBias(new(bias, u), new(drift, ud), 0.15, wander, Noon);
            if (outlook.Likely is { } likely) Assert.True(outlook.Earliest is { } earliest && earliest <= likely);
            if (outlook.Latest is { } latest) Assert.True(outlook.Earliest <= latest && (outlook.Likely is not { } l || l <= latest));
            var mirrored = ServiceForecast.ByBias(new(-bias, u), new(-drift, ud), 0.15, wander, Noon);
            Assert.Equal((outlook.Earliest, outlook.Likely, outlook.Latest), (mirrored.Earliest, mirrored.Likely, mirrored.Latest));
        });

    private static double Days(Instant? at) => (Assert.NotNull(at) - Noon).TotalDays;
}
