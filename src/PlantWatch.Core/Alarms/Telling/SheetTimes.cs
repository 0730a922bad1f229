using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>A sheet that is due.</summary>
/// <param name="DueAt">When it was due.</param>
/// <param name="First">The first day it is about.</param>
/// <param name="Last">The last day it is about, included.</param>
public readonly record struct SheetDue(Instant DueAt, DateOnly First, DateOnly Last);

/// <summary>When planned sheets are due, and about which days. Pure: the same plan and time give the same, so that one is due once however often it is asked.</summary>
public static class SheetTimes
{
    /// <summary>How long after its time a sheet is still sent: a server that was off over the night sends in the morning what it owes, and not what is long past (our own choice).</summary>
    public static TimeSpan Late { get; } = TimeSpan.FromHours(12);

    /// <summary>The newest that is due and not too late; null when there is none. A time of day that comes twice is the first, one that is skipped is moved on by the gap: a day of 23 or 25 hours has one.</summary>
    /// <param name="plan">The sheet.</param>
    /// <param name="timeZone">IANA zone of the site; without one there is none.</param>
    /// <param name="now">The time.</param>
    public static SheetDue? Newest(SheetPlan plan, string timeZone, Instant now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!SiteClock.TryOf(timeZone, out var clock)) return null;
        var today = clock.DayOf(now);
        for (var back = 0; back >= -1; back--)
        {
            var day = today.AddDays(back);
            var due = clock.At(day, plan.At);
            if (IsDay(plan.Every, day) && due <= now && now - due <= Late) return new(due, FirstOf(plan.Every, day), day.AddDays(-1));
        }

        return null;
    }

    private static bool IsDay(SheetRhythm every, DateOnly day) => every switch
    {
        SheetRhythm.Week => day.DayOfWeek == DayOfWeek.Monday,
        SheetRhythm.Month => day.Day == 1,
        _ => true,
    };

    private static DateOnly FirstOf(SheetRhythm every, DateOnly day) => every switch
    {
        SheetRhythm.Week => day.AddDays(-7),
        SheetRhythm.Month => day.AddMonths(-1),
        _ => day.AddDays(-1),
    };
}
