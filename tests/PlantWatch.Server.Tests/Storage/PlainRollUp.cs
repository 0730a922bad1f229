using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>The answer to a series query straight from its definition, without any tier kept, in plain LINQ: what every store is held against.</summary>
internal static class PlainRollUp
{
    public static SeriesAnswer Line(SortedList<Instant, StoredReading> readings, SeriesQuery query, TimeZoneInfo zone)
    {
        var range = query.To - query.From;
        var tier = TierFor(range / query.Width, range);
        var first = BucketOf(query.From, tier, zone);
        var buckets = readings.Values
            .GroupBy(r => BucketOf(r.MeasuredAt, tier, zone))
            .Where(g => g.Key >= first && g.Key < query.To).ToList();
        var step = TimeSpan.FromTicks(Math.Max(SpanOf(tier).Ticks, query.Expected.Ticks));
        var points = new List<SeriesPoint>();
        Instant? before = null;
        foreach (var pixel in buckets.GroupBy(b => PixelOf(b.Key, query)))
        {
            if (before is { } newest && step > TimeSpan.Zero && pixel.First().Key - newest > 2.5 * step) points.Add(SeriesPoint.Gap(newest + step));
            points.Add(PointOf(pixel.First().Key, [.. pixel.SelectMany(b => b)]));
            before = pixel.Last().Key;
        }
        return new SeriesAnswer(query.Series, tier, points);
    }

    public static ProbeWindow Window(string series, Instant from, Instant to, IReadOnlyList<StoredReading> readings)
    {
        var good = readings.Where(r => r.Quality.IsGood()).ToList();
        if (good.Count == 0) return new ProbeWindow(series, from, to, 0, readings.Count, 0, 0, 0);
        var mean = good.Average(r => r.Raw);
        var hours = good.Select(r => (r.MeasuredAt - from).TotalHours).ToList();
        var middle = hours.Average();
        var squares = good.Sum(r => (r.Raw - mean) * (r.Raw - mean));
        var hourSquares = hours.Sum(h => (h - middle) * (h - middle));
        var products = good.Zip(hours, (r, h) => (r.Raw - mean) * (h - middle)).Sum();
        return new ProbeWindow(
            series, from, to, good.Count, readings.Count - good.Count, good.Count < 5 ? mean : Middle([.. good.Select(r => r.Raw).Order()]),
            good.Count > 1 ? Math.Sqrt(squares / (good.Count - 1)) : 0, hourSquares > 0 ? products / hourSquares : 0);
    }

    private static double Middle(double[] ordered)
    {
        var left = Math.Max(1, ordered.Length / 10);
        return ordered[left..^left].Average();
    }

    private static int PixelOf(Instant start, SeriesQuery query)
    {
        if (start < query.From) return 0;
        return (int)((decimal)(start - query.From).Ticks * query.Width / (query.To - query.From).Ticks);
    }

    private static SeriesPoint PointOf(Instant at, IReadOnlyList<StoredReading> readings)
    {
        var good = readings.Where(r => r.Quality.IsGood()).ToList();
        var counted = good.Count > 0 ? good : readings;
        return new SeriesPoint(
            at, readings.Count, good.Count, counted.Min(r => r.Raw), counted.Average(r => r.Raw), counted.Max(r => r.Raw), readings[^1].Raw);
    }

    private static Tier TierFor(TimeSpan pixel, TimeSpan range) =>
        pixel >= TimeSpan.FromDays(1) && range >= TimeSpan.FromDays(730) ? Tier.Day
        : pixel >= TimeSpan.FromHours(1) ? Tier.Hour
        : pixel >= TimeSpan.FromMinutes(15) ? Tier.QuarterHour
        : pixel >= TimeSpan.FromMinutes(1) ? Tier.Minute : Tier.Raw;

    private static TimeSpan SpanOf(Tier tier) => tier switch
    {
        Tier.Minute => TimeSpan.FromMinutes(1),
        Tier.QuarterHour => TimeSpan.FromMinutes(15),
        Tier.Hour => TimeSpan.FromHours(1),
        Tier.Day => TimeSpan.FromDays(1),
        _ => TimeSpan.Zero,
    };

    private static Instant BucketOf(Instant t, Tier tier, TimeZoneInfo zone)
    {
        if (tier == Tier.Raw) return t;
        if (tier != Tier.Day) return t - TimeSpan.FromTicks(t.ToDateTimeOffset().Ticks % SpanOf(tier).Ticks);
        // Walks back by quarters of an hour to the first one of the same local date.
        var date = DateOf(t, zone);
        var start = BucketOf(t, Tier.QuarterHour, zone);
        while (DateOf(start - SpanOf(Tier.QuarterHour), zone) == date) start -= SpanOf(Tier.QuarterHour);
        return start;
    }

    private static DateTime DateOf(Instant t, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(t.ToDateTimeOffset(), zone).Date;
}
