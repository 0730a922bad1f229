using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>Hours on the wall put on a site's clock.</summary>
internal static class WallTimes
{
    /// <summary>The end of the hours that hold an instant; never when none of them does. On a day of 23 or 25 hours it is still the time on the wall that counts.</summary>
    /// <param name="hours">The hours.</param>
    /// <param name="clock">The site's clock.</param>
    /// <param name="at">The instant.</param>
    /// <param name="begins">Whether they begin on a day of the week.</param>
    public static Instant EndOf(this WallHours hours, SiteClock clock, Instant at, Func<DayOfWeek, bool> begins)
    {
        var today = clock.DayOf(at);
        for (var back = -1; back <= 0; back++)
        {
            var day = today.AddDays(back);
            var end = clock.At(hours.To <= hours.From ? day.AddDays(1) : day, hours.To);
            if (begins(day.DayOfWeek) && clock.At(day, hours.From) <= at && at < end) return end;
        }

        return Instant.Never;
    }
}
