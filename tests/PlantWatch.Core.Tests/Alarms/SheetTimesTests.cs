using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>Planned sheets. Changes of the clock in London as in the tz database: 29 March and 25 October 2026, at 01:00 UTC.</summary>
public class SheetTimesTests
{
    private static SheetPlan Plan(SheetRhythm every = SheetRhythm.Day, int hour = 6, int minute = 30) => new("day-log", ["main"], new(hour, minute), every, ["ann"]);

    private static SheetDue? At(SheetPlan plan, Instant now) => SheetTimes.Newest(plan, "Europe/London", now);

    [Fact]
    public void It_is_due_from_its_time_on_about_the_day_before_and_no_more_after_half_a_day()
    {
        // 06:30 in London is 05:30 UTC in May.
        Assert.Null(At(Plan(), Instant.FromUtc(2026, 5, 4, 5, 29)));
        Assert.Equal(new SheetDue(Instant.FromUtc(2026, 5, 4, 5, 30), new(2026, 5, 3), new(2026, 5, 3)), At(Plan(), Instant.FromUtc(2026, 5, 4, 5, 30)));
        Assert.NotNull(At(Plan(), Instant.FromUtc(2026, 5, 4, 17, 30)));
        Assert.Null(At(Plan(), Instant.FromUtc(2026, 5, 4, 17, 31)));
    }

    [Fact]
    public void One_of_the_evening_is_still_due_after_midnight() =>
        Assert.Equal(new DateOnly(2026, 5, 3), At(Plan(hour: 23), Instant.FromUtc(2026, 5, 5, 1))!.Value.First);

    [Theory]
    [InlineData(3, 29, 23)]
    [InlineData(3, 30, 24)]
    [InlineData(10, 25, 25)]
    public void Whatever_the_clock_does_it_is_due_once_a_day(int month, int day, int hours)
    {
        // Half past one comes twice in October and is skipped in March: the worst time there is.
        var (plan, midnight) = (Plan(hour: 1, minute: 30), Instant.FromUtc(2026, month, day) - TimeSpan.FromHours(month == 10 ? 1 : month == 3 && day == 30 ? 1 : 0));
        var due = Enumerable.Range(0, hours * 60).Select(m => At(plan, midnight + TimeSpan.FromMinutes(m))).OfType<SheetDue>().Where(d => d.DueAt >= midnight).Select(d => d.DueAt).Distinct();
        Assert.Single(due);
    }

    [Fact]
    public void A_week_goes_from_Monday_to_Sunday_and_a_month_from_its_first_to_its_last()
    {
        Assert.Null(At(Plan(SheetRhythm.Week), Instant.FromUtc(2026, 5, 5, 6)));
        Assert.Equal((new DateOnly(2026, 4, 27), new DateOnly(2026, 5, 3)), At(Plan(SheetRhythm.Week), Instant.FromUtc(2026, 5, 4, 6)) is { } week ? (week.First, week.Last) : default);
        Assert.Null(At(Plan(SheetRhythm.Month), Instant.FromUtc(2026, 3, 2, 7)));
        Assert.Equal((new DateOnly(2026, 2, 1), new DateOnly(2026, 2, 28)), At(Plan(SheetRhythm.Month), Instant.FromUtc(2026, 3, 1, 7)) is { } month ? (month.First, month.Last) : default);
    }
}
