using CsCheck;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Correction;

public sealed class DayRatingTests
{
    private static readonly DayEvidence Whole = new(1440, 1440, Standing.Good, new(0.05, 0.05), 0, 0);

    // The classes of USGS TM 1-D3 for pH: 0.2, 0.5, 0.8 (from memory); daily ratings by the sum of corrections without sign are described by the USGS Office of Water Quality (published).
    [Theory]
    [InlineData(0.19, RecordRating.Excellent)]
    [InlineData(0.21, RecordRating.Good)]
    [InlineData(0.49, RecordRating.Good)]
    [InlineData(0.51, RecordRating.Fair)]
    [InlineData(0.79, RecordRating.Fair)]
    [InlineData(0.81, RecordRating.Poor)]
    public void A_whole_day_of_pH_is_rated_by_what_it_was_corrected_by(double corrected, RecordRating expected) =>
        Assert.Equal(expected, DayRating.Of(Measurand.Ph, Whole with { Corrected = corrected }).Rating);

    [Fact]
    public void Without_a_correction_the_bias_by_the_tests_stands_for_it_with_its_uncertainty()
    {
        var rated = DayRating.Of(Measurand.Ph, Whole with { Error = new(-0.25, 0.05) });
        Assert.Equal((RecordRating.Good, 0.35), (rated.Rating, Math.Round(rated.Error!.Value, 9)));
        Assert.Equal("quality.error", Assert.Single(rated.Why).Code);
    }

    [Fact]
    public void A_day_of_which_no_test_told_anything_is_not_called_excellent() =>
        Assert.Equal(RecordRating.NotRated, DayRating.Of(Measurand.Ph, Whole with { Error = default }).Rating);

    [Fact]
    public void A_day_without_a_good_reading_is_not_rated() => Assert.Equal(RecordRating.NotRated, DayRating.Of(Measurand.Ph, Whole with { Good = 0 }).Rating);

    [Theory]
    [InlineData(0.96, RecordRating.Excellent)]
    [InlineData(0.94, RecordRating.Good)]
    [InlineData(0.79, RecordRating.Fair)]
    [InlineData(0.49, RecordRating.Poor)]
    public void What_is_missing_lowers_the_rating_and_is_said(double share, RecordRating expected)
    {
        var rated = DayRating.Of(Measurand.Ph, Whole with { Good = 1440 * share });
        Assert.Equal(expected, rated.Rating);
        Assert.Equal(expected > RecordRating.Excellent, rated.Why[0].Code == "quality.incomplete");
    }

    [Theory]
    [InlineData(Standing.MaintenanceRequired, RecordRating.Good)]
    [InlineData(Standing.OutOfSpecification, RecordRating.Fair)]
    [InlineData(Standing.Failure, RecordRating.Poor)]
    public void A_probe_that_stood_badly_lowers_the_rating(Standing worst, RecordRating expected) =>
        Assert.Equal(expected, DayRating.Of(Measurand.Ph, Whole with { Worst = worst }).Rating);

    [Fact]
    public void More_error_fewer_readings_or_a_worse_standing_never_rate_better() =>
        (from error in Gen.Double[-1, 1] from more in Gen.Double[0, 1] from good in Gen.Double[1, 1440] from fewer in Gen.Double[0, 1] select (error, more, good, fewer)).Sample(made =>
        {
            var day = Whole with { Error = new(made.error, 0.05), Good = made.good };
            var before = DayRating.Of(Measurand.Ph, day).Rating;
            Assert.True(DayRating.Of(Measurand.Ph, day with { Error = new(made.error + (Math.Sign(made.error) * made.more), 0.05) }).Rating >= before);
            Assert.True(DayRating.Of(Measurand.Ph, day with { Good = Math.Max(1, made.good * made.fewer) }).Rating >= before);
            Assert.True(DayRating.Of(Measurand.Ph, day with { Worst = Standing.Failure }).Rating >= before);
        });
}
