namespace PlantWatch.Core.Plant.Fold;

/// <summary>What is believed of a device's clock. A wrong one is reported, never silently corrected.</summary>
internal static class DeviceClock
{
    /// <summary>Further ahead than this a reading claims a time that has not come, and is refused.</summary>
    public static readonly TimeSpan AheadTolerance = TimeSpan.FromMinutes(2);

    /// <summary>Further back than this no gateway's buffer reaches: the clock is wrong, and the reading refused.</summary>
    public static readonly TimeSpan OldestBackFill = TimeSpan.FromDays(366);

    /// <summary>Readings this much older than the watermark, or than their receipt, are late. Where the newest of a series are, its clock or link is worth an alarm: nothing else would say that its limits are not watched.</summary>
    public static TimeSpan LateAfter(TimeSpan every) => TimeSpan.FromTicks(Math.Max(TimeSpan.FromSeconds(90).Ticks, 3 * every.Ticks));
}
