using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public abstract partial class StoreContract
{
    private static readonly Quality Doubted = Quality.Received | Quality.Suspect;

    private async Task<SeriesAnswer> Line(Instant from, Instant to, int width, TimeSpan expected = default, string series = "main-ph") =>
        await Series.SeriesAsync(Batch.Main, new SeriesQuery(series, from, to, width, expected), None);

    [Theory]
    [InlineData(1, 1200, Tier.Raw)]
    [InlineData(20, 1200, Tier.Minute)]
    [InlineData(24, 1200, Tier.Minute)]
    [InlineData(7 * 24, 1200, Tier.Minute)]
    [InlineData(31 * 24, 1200, Tier.QuarterHour)]
    [InlineData(365 * 24, 1200, Tier.Hour)]
    [InlineData(365 * 24, 100, Tier.Hour)]
    [InlineData(730 * 24, 730, Tier.Day)]
    [InlineData(3650 * 24, 1200, Tier.Day)]
    public async Task The_coarsest_tier_that_fills_the_width_answers(int hours, int width, Tier tier)
    {
        Assert.Equal(tier, (await Line(At(0), At(0) + TimeSpan.FromHours(hours), width)).Tier);
    }

    [Fact]
    public async Task A_query_without_width_or_range_is_a_programmers_mistake()
    {
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Line(At(1), At(2), 0));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Line(At(2), At(2), 10));
    }

    [Fact]
    public async Task A_raw_reading_is_its_own_point()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12, 0, 7), 7.25), Batch.Ph(At(12, 0, 9), 7.5, Doubted)));

        var line = await Line(At(12), At(12, 1), 60, TimeSpan.FromSeconds(2));

        Assert.Equal(Tier.Raw, line.Tier);
        Assert.Equal(
            [new SeriesPoint(At(12, 0, 7), 1, 1, 7.25, 7.25, 7.25, 7.25), new SeriesPoint(At(12, 0, 9), 1, 0, 7.5, 7.5, 7.5, 7.5)],
            line.Points);
    }

    [Fact]
    public async Task A_bucket_speaks_of_its_good_readings_and_of_all_where_none_is_good()
    {
        await Commit(Batch.Of(1,
            Batch.Ph(At(12, 0, 1), 1, Doubted), Batch.Ph(At(12, 0, 2), 7), Batch.Ph(At(12, 0, 3), 7.5, Quality.Received | Quality.Late), Batch.Ph(At(12, 0, 4), 14, Doubted),
            Batch.Ph(At(12, 1, 1), 2, Doubted), Batch.Ph(At(12, 1, 2), 4, Doubted)));
        // The second minute gets its good reading in a later batch, the first one a bad one.
        await Commit(Batch.Of(2, Batch.Ph(At(12, 1, 3), 8), Batch.Ph(At(12, 2, 0), 3, Doubted)));

        var line = await Line(At(12), At(12, 10), 10);

        Assert.Equal(
            [
                new SeriesPoint(At(12, 0), 4, 2, 7, 7.25, 7.5, 14),
                new SeriesPoint(At(12, 1), 3, 1, 8, 8, 8, 8),
                new SeriesPoint(At(12, 2), 1, 0, 3, 3, 3, 3),
            ],
            line.Points);
    }

    [Fact]
    public async Task Buckets_are_merged_to_the_width_without_losing_an_extreme()
    {
        await Commit(Batch.Of(1, [.. Enumerable.Range(0, 7200).Select(i => Batch.Ph(At(12) + TimeSpan.FromSeconds(i), i == 5000 ? 14 : i == 77 ? 0 : 7))]));

        var line = await Line(At(12), At(14), 50, TimeSpan.FromSeconds(1));

        Assert.Equal(Tier.Minute, line.Tier);
        Assert.Equal(50, line.Points.Count);
        Assert.Equal(7200, line.Points.Sum(p => p.Count));
        Assert.Equal((0d, 14d), (line.Points.Min(p => p.Min), line.Points.Max(p => p.Max)));
        Assert.Equal(((7198 * 7) + 14) / 7200d, line.Points.Sum(p => p.Mean * p.Count) / 7200, 12);
    }

    [Fact]
    public async Task Raw_readings_are_merged_to_the_width_too()
    {
        await Commit(Batch.Of(1, [.. Enumerable.Range(0, 600).Select(i => Batch.Ph(At(12) + TimeSpan.FromSeconds(i), i % 2))]));

        var line = await Line(At(12), At(12, 10), 100, TimeSpan.FromSeconds(1));

        Assert.Equal((Tier.Raw, 100), (line.Tier, line.Points.Count));
        Assert.All(line.Points, p => Assert.Equal((6, 0d, 0.5, 1d, 1d), (p.Count, p.Min, p.Mean, p.Max, p.Last)));
    }

    [Fact]
    public async Task What_lies_in_the_first_bucket_is_not_lost_at_the_left_edge()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12, 0, 40), 7)));

        var line = await Line(At(12, 0, 30), At(13, 0, 30), 60);

        Assert.Equal((Tier.Minute, At(12)), (line.Tier, line.Points.Single().At));
    }

    [Fact]
    public async Task Silence_is_a_gap_from_when_the_next_reading_was_due()
    {
        Reading[] readings = [Batch.Ph(At(12), 7), Batch.Ph(At(12, 0, 10), 7), Batch.Ph(At(12, 0, 35), 7), Batch.Ph(At(12, 1, 1), 7)];
        await Commit(Batch.Of(1, readings));

        var line = await Line(At(12), At(12, 2), 120, TimeSpan.FromSeconds(10));

        // 25 s are borne, 26 s are not.
        Assert.Equal([At(12), At(12, 0, 10), At(12, 0, 35), At(12, 0, 45), At(12, 1, 1)], line.Points.Select(p => p.At));
        Assert.Equal([At(12, 0, 45)], line.Points.Where(p => p.IsGap).Select(p => p.At));
        Assert.DoesNotContain((await Line(At(12), At(12, 2), 120)).Points, p => p.IsGap);
    }

    [Fact]
    public async Task In_roll_ups_the_longer_of_bucket_and_expectation_decides_what_a_gap_is()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12, 0), 7), Batch.Ph(At(12, 2), 7), Batch.Ph(At(12, 5), 7)));

        var strict = await Line(At(12), At(12, 10), 10, TimeSpan.FromSeconds(10));
        var patient = await Line(At(12), At(12, 10), 10, TimeSpan.FromMinutes(2));

        Assert.Equal([At(12, 0), At(12, 2), At(12, 3), At(12, 5)], strict.Points.Select(p => p.At));
        Assert.Equal([At(12, 3)], strict.Points.Where(p => p.IsGap).Select(p => p.At));
        Assert.DoesNotContain(patient.Points, p => p.IsGap);
    }

    [Fact]
    public async Task Gaps_come_on_top_of_the_width()
    {
        await Commit(Batch.Of(1, [.. Enumerable.Range(0, 12).Select(i => Batch.Ph(At(12, i * 5), 7))]));

        var line = await Line(At(12), At(13), 12, TimeSpan.FromSeconds(10));

        Assert.Equal((12, 11), (line.Points.Count(p => !p.IsGap), line.Points.Count(p => p.IsGap)));
    }

    [Theory]
    // The clocks of Europe/London go forward on 2026-03-29 and back on 2026-10-25 (IANA time zone database, EU rule of 1996).
    [InlineData(3, 29, 23)]
    [InlineData(10, 25, 25)]
    [InlineData(6, 1, 24)]
    public async Task The_sites_day_has_its_own_length(int month, int day, int hours)
    {
        var noon = Instant.FromUtc(2026, month, day, 12);
        var start = noon - TimeSpan.FromHours(40);
        var seq = 0;
        foreach (var half in Enumerable.Range(0, 160).Select(i => start + TimeSpan.FromMinutes(30 * i)).Chunk(37))
            await Commit(Batch.Of(++seq, [.. half.Select(t => Batch.Ph(t, 7))]));

        var line = await Line(start - TimeSpan.FromDays(400), start + TimeSpan.FromDays(400), 800, TimeSpan.FromMinutes(30));

        Assert.Equal(Tier.Day, line.Tier);
        var local = line.Points.ToDictionary(p => TimeZoneInfo.ConvertTime(p.At.ToDateTimeOffset(), London).DateTime, p => p.Count);
        Assert.Equal(2 * hours, local[new DateTime(2026, month, day, 0, 0, 0, DateTimeKind.Unspecified)]);
        Assert.All(local.Keys, t => Assert.Equal(TimeSpan.Zero, t.TimeOfDay));
        Assert.Equal(160, local.Values.Sum());
    }

    [Fact]
    public async Task A_late_reading_changes_every_tier_and_the_last_value_stays_the_newest()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12, 0, 10), 7), Batch.Ph(At(12, 0, 50), 8)));

        await Commit(Batch.Of(2, Batch.Late(At(12, 0, 30), 3), Batch.Ph(At(12, 0, 55), 6), Batch.Late(At(11, 59), 1)));

        var minute = (await Line(At(12), At(12, 10), 10)).Points.Single();
        var quarter = (await Line(At(12), At(15), 12)).Points.Single();
        var hour = (await Line(At(11), At(18), 7)).Points[1];
        var day = (await Line(At(0) - TimeSpan.FromDays(400), At(0) + TimeSpan.FromDays(400), 800)).Points.Single();
        Assert.Equal(new SeriesPoint(At(12), 4, 4, 3, 6, 8, 6), minute);
        Assert.Equal(minute, quarter);
        Assert.Equal(minute, hour);
        Assert.Equal((5, 5, 1d, 5d, 8d, 6d), (day.Count, day.Good, day.Min, day.Mean, day.Max, day.Last));
    }

    [Fact]
    public async Task A_window_tells_count_mean_deviation_and_slope_of_the_good_readings()
    {
        // y = 7 + 2 h over 0, 1/4, 1/2, 3/4 h: mean 7.75, sample deviation sqrt(1.25 / 3), slope 2 an hour.
        await Commit(Batch.Of(1,
            Batch.Ph(At(12), 7), Batch.Ph(At(12, 15), 7.5), Batch.Ph(At(12, 20), 14, Doubted), Batch.Ph(At(12, 30), 8), Batch.Ph(At(12, 45), 8.5),
            Batch.Ph(At(13), 99)));

        var window = await Series.WindowAsync(Batch.Main, "main-ph", At(12), At(13), None);

        Assert.Equal(("main-ph", At(12), At(13), 4, 1), (window.Series, window.From, window.To, window.Count, window.Excluded));
        Assert.Equal(7.75, window.Mean, 12);
        Assert.Equal(Math.Sqrt(1.25 / 3), window.StandardDeviation, 12);
        Assert.Equal(2, window.PerHour, 12);
    }

    [Fact]
    public async Task A_spike_in_a_window_does_not_move_its_mean_and_its_deviation_owns_up_to_it()
    {
        await Commit(Batch.Of(1, [.. Enumerable.Range(0, 12).Select(i => Batch.Ph(At(12, i), i == 7 ? 14 : 7.4 + (0.01 * (i % 2))))]));

        var window = await Series.WindowAsync(Batch.Main, "main-ph", At(12), At(13), None);

        Assert.Equal((12, 0), (window.Count, window.Excluded));
        Assert.Equal(7.405, window.Mean, 0.0011);
        Assert.True(window.StandardDeviation > 1);
    }

    [Fact]
    public async Task A_window_with_one_reading_has_no_deviation_and_one_without_has_no_count()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7), Batch.Ph(At(14), 7, Doubted)));

        Assert.Equal(new ProbeWindow("main-ph", At(12), At(13), 1, 0, 7, 0, 0), await Series.WindowAsync(Batch.Main, "main-ph", At(12), At(13), None));
        Assert.Equal(new ProbeWindow("main-ph", At(13), At(15), 0, 1, 0, 0, 0), await Series.WindowAsync(Batch.Main, "main-ph", At(13), At(15), None));
    }
}
