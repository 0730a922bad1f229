using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>Days on the site's clock. Changes of the clock as in the tz database.</summary>
public sealed class SheetSpanTests
{
    private static SheetSpan Of(DateOnly first, DateOnly last, string zone = "Europe/London") => SheetSpan.Of(first, last, TimeZoneInfo.FindSystemTimeZoneById(zone));

    [Fact]
    public void A_day_has_23_24_or_25_hours_and_a_month_the_sum_of_them()
    {
        Assert.Equal([23, 24, 25], new[] { new DateOnly(2026, 3, 29), new DateOnly(2026, 3, 30), new DateOnly(2026, 10, 25) }.Select(d => Of(d, d).Hours));
        Assert.Equal((31, (31 * 24) - 1), (Of(new(2026, 3, 1), new(2026, 3, 31)).Days, Of(new(2026, 3, 1), new(2026, 3, 31)).Hours));
    }

    [Fact]
    public void Where_the_clock_leaps_over_midnight_the_day_begins_with_its_first_moment_and_where_midnight_comes_twice_with_the_first()
    {
        // Beirut leaps from 00:00 to 01:00 on 29 March 2026; Havana goes back from 01:00 to 00:00 on 1 November 2026.
        Assert.Equal(23, Of(new(2026, 3, 29), new(2026, 3, 29), "Asia/Beirut").Hours);
        Assert.Equal(25, Of(new(2026, 11, 1), new(2026, 11, 1), "America/Havana").Hours);
    }

    [Fact]
    public void A_moment_of_another_day_is_said_with_its_day()
    {
        var day = Of(new(2026, 5, 4), new(2026, 5, 4));
        Assert.Equal(("07:30", "2026-05-05 00:00"), (day.Say(Instant.FromUtc(2026, 5, 4, 6, 30)), day.Say(Instant.FromUtc(2026, 5, 4, 23))));
        Assert.Equal("2026-05-04T07:30:00+01:00", day.Iso(Instant.FromUtc(2026, 5, 4, 6, 30)));
    }
}
