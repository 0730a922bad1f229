namespace PlantWatch.Storage;

/// <summary>The spans of the roll-ups, in microseconds, and which of them answers a query.</summary>
internal static class Tiers
{
    public const long Minute = 60_000_000;
    public const long Quarter = 15 * Minute;
    public const long Hour = 60 * Minute;

    /// <summary>The site's day as it usually is.</summary>
    public const long Day = 24 * Hour;

    /// <summary>Below this a day is too coarse to be looked at, however narrow the picture.</summary>
    private const long TwoYears = 730 * Day;

    /// <summary>Start of the bucket that holds a moment.</summary>
    public static long Floor(long t, long width)
    {
        var rest = t % width;
        return rest < 0 ? t - rest - width : t - rest;
    }

    /// <summary>The coarsest tier that still has a bucket for each pixel.</summary>
    public static Tier For(long range, int width)
    {
        var pixel = range / width;
        return pixel >= Day && range >= TwoYears ? Tier.Day
            : pixel >= Hour ? Tier.Hour
            : pixel >= Quarter ? Tier.QuarterHour
            : pixel >= Minute ? Tier.Minute : Tier.Raw;
    }

    /// <summary>Length of a tier's bucket; 0 for raw readings.</summary>
    public static long SpanOf(Tier tier) => tier switch
    {
        Tier.Minute => Minute,
        Tier.QuarterHour => Quarter,
        Tier.Hour => Hour,
        Tier.Day => Day,
        _ => 0,
    };
}
