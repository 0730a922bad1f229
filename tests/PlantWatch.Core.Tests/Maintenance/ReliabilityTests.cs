using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Tests.Maintenance;

/// <summary>Mean time between failures against sums done by hand, its interval against tables of chi square.</summary>
public sealed class ReliabilityTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1);

    // Half of chi square at 2n and 2n + 2 degrees of freedom, 5 and 95 % (NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.4): 1.635 and 15.507, 10.851 and 33.924; 5.991 for none.
    [Theory]
    [InlineData(0, 0, 2.9957)]
    [InlineData(3, 0.8177, 7.7537)]
    [InlineData(10, 5.4254, 16.9622)]
    public void A_count_leaves_the_rates_of_the_table(int count, double low, double high)
    {
        var found = PoissonCount.Interval(count, 0.9);
        Assert.Equal(low, found.Low, 0.0005);
        Assert.Equal(high, found.High, 0.0005);
    }

    [Fact]
    public void The_interval_of_a_count_covers_what_it_says()
    {
        for (var count = 0; count <= 2000; count += count < 30 ? 1 : 97)
        {
            var (low, high) = PoissonCount.Interval(count, 0.9);
            Assert.Equal(0.05, PoissonCount.AtMost(count, high), 1e-9);
            if (count > 0) Assert.Equal(0.95, PoissonCount.AtMost(count - 1, low), 1e-9);
        }
    }

    // By hand: 100 days; down 2 days, then 1 and 3 that overlap by half a day, 3.5: 5.5 in all. In service 94.5 by 3 failures: 31.5 days; repair 5.5 / 3 days = 44 h.
    [Fact]
    public void Three_failures_in_a_hundred_days_are_worked_out_as_by_hand()
    {
        var r = Reliability.Of([Fails(10, 12), Fails(40, 41), Fails(40.5, 43.5)], Start, Start + TimeSpan.FromDays(100));
        Assert.Equal(3, r.Failures);
        Assert.Equal(TimeSpan.FromDays(5.5), r.Down);
        Assert.Equal(TimeSpan.FromDays(31.5), r.MeanTimeBetween);
        Assert.Equal(94.5 / 7.7537, r.AtLeast.TotalDays, 0.01);
        Assert.Equal(94.5 / 0.8177, r.AtMost!.Value.TotalDays, 0.1);
        Assert.Equal(44, r.MeanTimeToRepair!.Value.TotalHours, 1e-9);
    }

    [Fact]
    public void What_never_failed_has_no_mean_but_a_time_it_lasts_at_least()
    {
        var r = Reliability.Of([], Start, Start + TimeSpan.FromDays(365));
        Assert.Null(r.MeanTimeBetween);
        Assert.Null(r.AtMost);
        Assert.Null(r.MeanTimeToRepair);
        Assert.Equal(365 / 2.9957, r.AtLeast.TotalDays, 0.01);
        Assert.False(r.IsRepeatOffender);
    }

    [Fact]
    public void A_failure_before_the_time_counts_as_down_and_not_as_one_and_one_that_is_not_mended_is_down_till_now()
    {
        var r = Reliability.Of([Fails(-5, 2), new(Start + TimeSpan.FromDays(8), Instant.Never, JobEffect.Unknown)], Start, Start + TimeSpan.FromDays(10));
        Assert.Equal(1, r.Failures);
        Assert.Equal(TimeSpan.FromDays(4), r.Down);
    }

    [Fact]
    public void Three_failures_in_ninety_days_or_two_repairs_that_did_not_help_make_a_repeat_offender()
    {
        var now = Start + TimeSpan.FromDays(200);
        Assert.True(Reliability.Of([Fails(115, 116), Fails(150, 151), Fails(190, 191)], Start, now).IsRepeatOffender);
        Assert.False(Reliability.Of([Fails(105, 106), Fails(150, 151), Fails(190, 191)], Start, now).IsRepeatOffender);
        Assert.True(Reliability.Of([Fails(150, 151, JobEffect.DidNotHelp), Fails(190, 191, JobEffect.DidNotHelp)], Start, now).IsRepeatOffender);
        Assert.False(Reliability.Of([Fails(150, 151, JobEffect.DidNotHelp), Fails(190, 191, JobEffect.Helped)], Start, now).IsRepeatOffender);
    }

    private static Failure Fails(double seen, double mended, JobEffect effect = JobEffect.Helped) => new(Start + TimeSpan.FromDays(seen), Start + TimeSpan.FromDays(mended), effect);
}
