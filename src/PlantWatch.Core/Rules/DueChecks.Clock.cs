using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules;

/// <summary>The site's clock on the wall. Zone rules are data of the platform; which zone is an argument.</summary>
internal sealed class SiteClock(TimeZoneInfo zone)
{
    /// <summary>The clock of an IANA zone; false when there is no such zone.</summary>
    public static bool TryOf(string id, [NotNullWhen(true)] out SiteClock? clock)
    {
        clock = TimeZoneInfo.TryFindSystemTimeZoneById(id, out var zone) ? new SiteClock(zone) : null;
        return clock is not null;
    }

    /// <summary>The site's day at an instant.</summary>
    public DateOnly DayOf(Instant at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(at.ToDateTimeOffset().UtcDateTime, zone));

    /// <summary>The instant of a time on the wall: once only when the hour is repeated (the first), and moved on by the gap when it is skipped.</summary>
    public Instant At(DateOnly day, TimeOnly time)
    {
        var local = day.ToDateTime(time, DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(local)) return OfSkipped(local);
        var offset = zone.IsAmbiguousTime(local) ? Largest(zone.GetAmbiguousTimeOffsets(local)) : zone.GetUtcOffset(local);
        return Instant.From(new DateTimeOffset(local, offset));
    }

    // A skipped time read with the offset before the gap: 01:30 in a gap from 01:00 to 02:00 becomes 02:30.
    private Instant OfSkipped(DateTime local) => Instant.From(new DateTimeOffset(local, zone.GetUtcOffset(local.AddHours(-3))));

    // The larger offset is the one in force first: summer time before winter time.
    private static TimeSpan Largest(TimeSpan[] offsets)
    {
        var largest = offsets[0];
        foreach (var offset in offsets)
            if (offset > largest) largest = offset;
        return largest;
    }
}

/// <summary>The times of a duty on the time line.</summary>
internal static class DutyTimes
{
    /// <summary>The newest time of the duty whose window is open: it opens the allowance before, but not before the time ahead of it.</summary>
    public static bool TryNewest(SiteClock clock, ImmutableArray<TimeOnly> at, Instant now, TimeSpan allowance, out Instant due, out Instant opens)
    {
        (due, opens) = (Instant.Never, Instant.Never);
        var before = Instant.Never;
        var today = clock.DayOf(now);
        // Yesterday's last time may still stand, tomorrow's first may open before midnight; one day more gives the first its neighbour.
        for (var day = -2; day <= 1; day++)
            foreach (var time in at)
            {
                var candidate = clock.At(today.AddDays(day), time);
                var from = Instant.Later(candidate - allowance, before);
                before = Instant.Later(before, candidate);
                if (from > now || candidate < due) continue;
                (due, opens) = (candidate, from);
            }

        return due.IsSet;
    }
}
