using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Charts;

/// <summary>Europe/Berlin goes to summer time on 29 March 2026 at 02:00 and back on 25 October 2026 at 03:00 (IANA time zone database).</summary>
public sealed class OtherDayTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Fact]
    public void Eight_in_the_morning_lies_under_eight_in_the_morning_whatever_the_clock_did_in_the_night()
    {
        // 08:00 in winter is 07:00 UTC, 08:00 in summer 06:00 UTC.
        var laid = new OtherDay(Berlin, 1).Laid([Point(Instant.FromUtc(2026, 3, 28, 7))]);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 6), laid.Single().At);
        Assert.Equal(Instant.FromUtc(2026, 3, 28, 7), new OtherDay(Berlin, 1).Earlier(Instant.FromUtc(2026, 3, 29, 6)));
        Assert.Equal(Instant.FromUtc(2026, 3, 22, 7), new OtherDay(Berlin, 7).Earlier(Instant.FromUtc(2026, 3, 29, 6)));
    }

    [Fact]
    public void The_hour_that_this_day_never_had_breaks_the_line_of_the_day_before()
    {
        // A point each half hour from 01:00 to 03:30 local: 02:00 and 02:30 do not exist on the 29th.
        SeriesPoint[] past = [.. Enumerable.Range(0, 6).Select(i => Point(Instant.FromUtc(2026, 3, 28) + TimeSpan.FromMinutes(30 * i)))];
        var laid = new OtherDay(Berlin, 1).Laid(past);
        Assert.Equal([false, false, true, false, false], laid.Select(p => p.IsGap));
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1), laid[3].At);
    }

    [Fact]
    public void The_hour_that_came_twice_is_drawn_once_and_time_never_runs_back()
    {
        SeriesPoint[] past = [.. Enumerable.Range(0, 12).Select(i => Point(Instant.FromUtc(2026, 10, 24, 22) + TimeSpan.FromMinutes(30 * i)))];
        var laid = new OtherDay(Berlin, 1).Laid(past).Where(p => !p.IsGap).ToList();
        // 00:00 to 05:00 on the wall, in halves of an hour, the second 02:00 and 02:30 left out.
        Assert.Equal(10, laid.Count);
        Assert.Equal(laid.OrderBy(p => p.At).Select(p => p.At).Distinct(), laid.Select(p => p.At));
    }

    [Fact]
    public void The_end_of_a_picture_is_somewhere_even_where_the_clock_never_showed_it() =>
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 0, 30), new OtherDay(Berlin, 1).Earlier(Instant.FromUtc(2026, 3, 30, 0, 30)));

    private static SeriesPoint Point(Instant at) => new(at, 1, 1, 7.2, 7.2, 7.2, 7.2);
}
