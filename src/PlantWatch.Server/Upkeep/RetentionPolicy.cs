using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Upkeep;

/// <summary>How long readings are kept. The default keeps all of them.</summary>
/// <param name="Raw">Single readings; null for ever.</param>
/// <param name="Minutes">Minutes; null for ever.</param>
internal sealed record RetentionPolicy(TimeSpan? Raw, TimeSpan? Minutes)
{
    /// <summary>Below this a month's report, and the run-in of a replay, would find no readings.</summary>
    public const int LeastRawDays = 35;

    /// <summary>Readings may come in up to 366 days late: until then their minute must be there to tell whether they are new.</summary>
    public const int LeastMinuteDays = 400;

    /// <summary>Everything for ever.</summary>
    public bool IsForEver => Raw is null;

    /// <summary>The policy of a configuration; what is asked too short is held at the least.</summary>
    public static RetentionPolicy Of(RetentionOptions options)
    {
        var raw = options.RawDays is { } asked ? Math.Max(asked, LeastRawDays) : (int?)null;
        var minutes = raw is { } r && options.MinuteDays is { } m ? Math.Max(Math.Max(m, LeastMinuteDays), r) : (int?)null;
        return new(Span(raw), Span(minutes));
    }

    /// <summary>What is to go now.</summary>
    public Retention At(Instant now, bool heedFeed) => new(Before(now, Raw), Before(now, Minutes), heedFeed);

    private static TimeSpan? Span(int? days) => days is { } d ? TimeSpan.FromDays(d) : null;

    private static Instant Before(Instant now, TimeSpan? kept) => kept is { } span ? now - span : Instant.Never;
}
