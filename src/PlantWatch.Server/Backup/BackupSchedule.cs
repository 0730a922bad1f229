using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Backup;

/// <summary>When the nightly backup is due: once a day at an hour of the site's clock.</summary>
internal static class BackupSchedule
{
    /// <summary>The last moment at which one was due. Where the clocks leave the hour out it is the hour after it.</summary>
    public static Instant LastDue(Instant now, TimeZoneInfo zone, int hour)
    {
        var day = TimeZoneInfo.ConvertTime(now.ToDateTimeOffset(), zone).Date;
        var today = At(day, zone, hour);
        return today <= now ? today : At(day.AddDays(-1), zone, hour);
    }

    private static Instant At(DateTime day, TimeZoneInfo zone, int hour)
    {
        var local = day.AddHours(hour);
        if (zone.IsInvalidTime(local)) local = local.AddHours(1);
        return Instant.From(new DateTimeOffset(local, zone.GetUtcOffset(local)));
    }
}
