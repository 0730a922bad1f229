using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>Hours on the wall, the start included and the end not. An end that is not after the start is on the next day, so that equal times are a whole day. The default is every hour of the day.</summary>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
public readonly record struct WallHours(TimeOnly From, TimeOnly To)
{
    /// <summary>The end of the hours that hold an instant; never when none of them does. On a day of 23 or 25 hours it is still the time on the wall that counts.</summary>
    /// <param name="clock">The site's clock.</param>
    /// <param name="at">The instant.</param>
    /// <param name="begins">Whether they begin on a day of the week.</param>
    internal Instant EndOf(SiteClock clock, Instant at, Func<DayOfWeek, bool> begins)
    {
        var today = clock.DayOf(at);
        for (var back = -1; back <= 0; back++)
        {
            var day = today.AddDays(back);
            var end = clock.At(To <= From ? day.AddDays(1) : day, To);
            if (begins(day.DayOfWeek) && clock.At(day, From) <= at && at < end) return end;
        }

        return Instant.Never;
    }
}
