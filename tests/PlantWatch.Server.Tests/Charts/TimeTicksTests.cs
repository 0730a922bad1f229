using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;

namespace PlantWatch.Server.Tests.Charts;

public sealed class TimeTicksTests
{
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");

    [Fact]
    public void An_hour_the_clock_skips_is_not_labelled()
    {
        // 2026-03-29: 01:00 GMT becomes 02:00 BST.
        var labels = TimeTicks.Between(Instant.FromUtc(2026, 3, 29), Instant.FromUtc(2026, 3, 29, 4), London, 8).Select(l => l.Text);
        Assert.Equal(["29 Mar", "00:30", "02:00", "02:30", "03:00", "03:30", "04:00", "04:30", "05:00"], labels);
    }

    [Fact]
    public void An_hour_the_clock_shows_twice_is_labelled_once()
    {
        // 2026-10-25: 02:00 BST becomes 01:00 GMT.
        var labels = TimeTicks.Between(Instant.FromUtc(2026, 10, 24, 23), Instant.FromUtc(2026, 10, 25, 4), London, 6);
        Assert.Equal(["25 Oct", "01:00", "02:00", "03:00", "04:00"], labels.Select(l => l.Text));
        Assert.Equal(TimeSpan.FromHours(2), labels[2].At - labels[1].At);
    }

    [Theory]
    [InlineData(0.04)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(14)]
    [InlineData(40)]
    [InlineData(200)]
    [InlineData(400)]
    [InlineData(4000)]
    public void Any_range_gets_a_few_labels_but_never_more_than_fit(double days)
    {
        var from = Instant.FromUtc(2026, 3, 12, 6, 17);
        var to = from + TimeSpan.FromDays(days);
        var labels = TimeTicks.Between(from, to, London, 6);
        Assert.InRange(labels.Count, 1, 7);
        Assert.All(labels, l => Assert.True(l.At >= from && l.At <= to));
        Assert.Equal(labels.OrderBy(l => l.At), labels);
    }
}
