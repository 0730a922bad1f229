using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Storage;

public sealed class SiteCalendarTests
{
    [Theory]
    [InlineData("UTC")]
    [InlineData("Europe/London")]
    // Three quarters of an hour off the hour.
    [InlineData("Asia/Kathmandu")]
    // Clocks change by half an hour.
    [InlineData("Australia/Lord_Howe")]
    // Clocks leave out midnight in spring.
    [InlineData("Africa/Cairo")]
    [InlineData("Asia/Beirut")]
    // Clocks repeat the hour before midnight in autumn.
    [InlineData("America/Santiago")]
    // Clocks repeat the hour after midnight in autumn.
    [InlineData("America/Havana")]
    public void Days_follow_each_other_without_hole_or_overlap_and_hold_one_local_date(string id)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(id);
        var calendar = new SiteCalendar(zone);
        var days = 0;
        var end = Instant.FromUtc(2028, 1, 1).UnixMicroseconds;
        for (var day = calendar.DayOf(Instant.FromUtc(2026, 1, 1).UnixMicroseconds); day.Start < end; day = calendar.DayOf(day.End), days++)
        {
            Assert.Equal(0, day.Start % Tiers.Quarter);
            Assert.InRange(day.End - day.Start, 23 * Tiers.Hour, 25 * Tiers.Hour);
            Assert.Equal(day, new SiteCalendar(zone).DayOf(day.Start));
            Assert.Equal(day, new SiteCalendar(zone).DayOf(day.End - 1));
            Assert.Equal(day.End, calendar.DayOf(day.End).Start);
            Assert.NotEqual(Date(day.Start - 1), Date(day.Start));
            Assert.Equal(Date(day.Start), Date(day.End - 1));
        }
        Assert.InRange(days, 730, 731);

        DateTime Date(long t) => TimeZoneInfo.ConvertTime(Instant.FromUnixMicroseconds(t).ToDateTimeOffset(), zone).Date;
    }

    [Theory]
    [InlineData(-1, -60_000_000)]
    [InlineData(-60_000_000, -60_000_000)]
    [InlineData(0, 0)]
    [InlineData(59_999_999, 0)]
    public void A_bucket_starts_at_or_before_its_moment_also_before_1970(long t, long start)
    {
        Assert.Equal(start, Tiers.Floor(t, Tiers.Minute));
    }
}
