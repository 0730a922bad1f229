using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>A trend against what is known of its line: the certified fit, the closed form, and how often its interval holds the truth.</summary>
public sealed class TrendTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private static readonly Instant Noon = Instant.FromUtc(2026, 5, 5, 12);

    [Fact]
    public void A_line_without_scatter_is_found_and_reaches_its_limit_when_it_does()
    {
        // 7.40 falling 0.3 an hour from the middle of the window: 7.20 is 40 min from there, 32.5 from its end.
        Assert.True(Core.Probes.Trend.TryOf(Line(7.4, -0.3, _ => 0), Minute, 0, out var trend));
        Assert.Equal(-0.3, trend.Slope, 9);
        Assert.Equal(7.4 - (0.3 * 7.5 / 60), trend.Now, 9);
        Assert.True(TimeToLimit.TryOf(trend, 7.2, out var time));
        Assert.Equal(32.5 / 60, time.Hours, 9);
        Assert.Equal(time.Hours, time.Earliest, 6);
        Assert.Equal(time.Hours, time.Latest, 6);
    }

    [Fact]
    public void Slope_and_error_are_those_of_the_fit_that_holds_to_certified_data()
    {
        // Residuals that jump from block to block, so that nothing is widened.
        double[] scatter = [0.4, -0.3, 0.5, -0.6, 0.2, -0.4, 0.7, -0.5, 0.1, -0.3, 0.6, -0.2, 0.3, -0.7, 0.2];
        Assert.True(Core.Probes.Trend.TryOf(Line(700, 12, i => scatter[i]), Minute, 0, out var trend));
        XyPoint[] points = [.. Enumerable.Range(0, 15).Select(i => new XyPoint((i - 7) / 60.0, 700 + (12 * (i - 7) / 60.0) + scatter[i]))];
        var fit = LeastSquares.Of(points).Figures;
        Assert.Equal(fit.Slope, trend.Slope, 9);
        Assert.Equal(fit.SlopeError, trend.SlopeError, 9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_a_known_line_with_noise_the_interval_holds_the_true_time_in_95_of_100_cases(int seed)
    {
        var chance = new Random(seed);
        var (held, told) = (0, 0);
        for (var run = 0; run < 4000; run++)
        {
            var line = Line(7.4, -0.4, _ => 0.01 * Normal(chance));
            Assert.True(Core.Probes.Trend.TryOf(line, Minute, 0, out var trend));
            if (!TimeToLimit.TryOf(trend, 7.2, out var time)) continue;
            told++;
            var truth = 0.5 - trend.HalfWindow;
            if (truth >= time.Earliest && truth <= time.Latest) held++;
        }

        Assert.Equal(4000, told);
        // Three standard deviations of 4000 draws are 1 %; the widening for likeness adds up to 2 % where there is none.
        Assert.InRange(held / 4000.0, 0.94, 0.98);
    }

    [Fact]
    public void Noise_alone_seldom_has_a_sure_slope_even_when_it_is_alike_from_block_to_block()
    {
        var chance = new Random(7);
        var sure = 0;
        for (var run = 0; run < 4000; run++)
        {
            var last = Normal(chance);
            var line = Line(700, 0, _ => last = (0.5 * last) + (Math.Sqrt(0.75) * Normal(chance)));
            Assert.True(Core.Probes.Trend.TryOf(line, Minute, 0, out var trend));
            if (trend.SurelyAtLeast > 0) sure++;
        }

        // 5 % by itself; without the widening it is about 25 %.
        Assert.InRange(sure / 4000.0, 0, 0.14);
    }

    [Fact]
    public void A_line_that_leads_away_or_whose_sign_is_open_reaches_nothing()
    {
        Assert.True(Core.Probes.Trend.TryOf(Line(7.4, 0.3, _ => 0), Minute, 0.001, out var rising));
        Assert.False(TimeToLimit.TryOf(rising, 7.2, out _));
        Assert.True(Core.Probes.Trend.TryOf(Line(7.4, -0.001, i => i % 2 * 0.05), Minute, 0.001, out var open));
        Assert.False(TimeToLimit.TryOf(open, 7.2, out _));
    }

    [Fact]
    public void A_block_without_a_reading_begins_the_trail_anew()
    {
        var trail = Line(7.4, -0.3, _ => 0);
        Assert.True(trail.IsFull);
        var after = trail.Hear(Noon + TimeSpan.FromMinutes(18), 7.3, Minute);
        Assert.Empty(after.Means);
        Assert.False(Core.Probes.Trend.TryOf(after, Minute, 0, out _));
    }

    [Fact]
    public void A_trail_stays_small_and_comes_back_from_its_snapshot_the_same()
    {
        var trail = Line(7.4, -0.3, i => i * 0.01);
        var json = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(trail, PlantJson.Options);
        Assert.Equal(trail, System.Text.Json.JsonSerializer.Deserialize<ValueTrail>(json, PlantJson.Options));
        Assert.InRange(json.Length, 1, 500);
        Assert.Equal(default, System.Text.Json.JsonSerializer.Deserialize<ValueTrail>(System.Text.Json.JsonSerializer.Serialize(default(ValueTrail), PlantJson.Options), PlantJson.Options));
    }

    // Fifteen blocks of one reading each, and the sixteenth that closes the last; the line is given at the middle of the window.
    private static ValueTrail Line(double middle, double perHour, Func<int, double> scatter)
    {
        var trail = default(ValueTrail);
        for (var i = 0; i < ValueTrail.Length; i++) trail = trail.Hear(Noon + TimeSpan.FromMinutes(i), middle + (perHour * (i - 7) / 60) + scatter(i), Minute);
        return trail.Hear(Noon + TimeSpan.FromMinutes(ValueTrail.Length), middle, Minute);
    }

    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
