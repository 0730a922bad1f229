namespace PlantWatch.Storage.Sqlite;

/// <summary>The days of a site: from local midnight to local midnight, 23 to 25 hours. Times in microseconds of UTC.</summary>
internal sealed class SiteCalendar(TimeZoneInfo zone)
{
    private Day _cached;

    /// <summary>A day, start included, end excluded.</summary>
    public readonly record struct Day(long Start, long End)
    {
        public bool Contains(long t) => t >= Start && t < End;
    }

    /// <summary>The zone's id.</summary>
    public string ZoneId => zone.Id;

    /// <summary>The day that holds a moment. Used by one thread at a time: it remembers the last answer.</summary>
    public Day DayOf(long t)
    {
        if (!_cached.Contains(t)) _cached = Find(t);
        return _cached;
    }

    private Day Find(long t)
    {
        var local = TimeZoneInfo.ConvertTime(DateTimeOffset.UnixEpoch.AddTicks(t * 10), zone);
        return new Day(StartOf(local.Date), StartOf(local.Date.AddDays(1)));
    }

    private long StartOf(DateTime midnight)
    {
        var utc = midnight - OffsetAt(midnight);
        return (utc.Ticks - DateTimeOffset.UnixEpoch.Ticks) / 10;
    }

    private TimeSpan OffsetAt(DateTime midnight)
    {
        // Where the clocks leave out midnight, the day starts at the change, which the offset before it names.
        if (zone.IsInvalidTime(midnight)) return zone.GetUtcOffset(midnight.AddHours(-3));
        // Where midnight comes twice, the day starts with the first.
        if (zone.IsAmbiguousTime(midnight)) return Largest(zone.GetAmbiguousTimeOffsets(midnight));
        return zone.GetUtcOffset(midnight);
    }

    private static TimeSpan Largest(TimeSpan[] offsets)
    {
        var largest = offsets[0];
        foreach (var offset in offsets)
            if (offset > largest) largest = offset;
        return largest;
    }
}
