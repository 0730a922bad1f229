using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>Turns buckets in time order into at most a point for each pixel, with silences as gaps.</summary>
/// <remarks>A silence that begins and ends within one pixel cannot be drawn and is none.</remarks>
internal sealed class LineBuilder
{
    /// <summary>So many expected intervals of silence make a gap: one late reading does not, two missed ones do.</summary>
    private const double Patience = 2.5;

    private readonly long from;
    private readonly int width;
    private readonly long range;
    private readonly double longestSilence;
    private readonly long step;
    private readonly List<SeriesPoint> points = [];
    private Bucket pixel;
    private int place = -1;
    private long newest;

    public LineBuilder(SeriesQuery query, Tier tier)
    {
        from = query.From.UnixMicroseconds;
        width = query.Width;
        range = query.To.UnixMicroseconds - from;
        step = Math.Max(Tiers.SpanOf(tier), query.Expected.Ticks / 10);
        // Of a raw series with no expectation nobody can say that it is silent.
        longestSilence = step > 0 ? Patience * step : double.PositiveInfinity;
    }

    /// <summary>Takes the next bucket.</summary>
    public void Add(in Bucket bucket)
    {
        // A bucket that began before the range belongs to the first pixel.
        var at = bucket.Start < from ? 0 : (int)((UInt128)(bucket.Start - from) * (uint)width / (UInt128)range);
        if (at != place)
        {
            Finish();
            if (place >= 0 && bucket.Start - newest > longestSilence) points.Add(SeriesPoint.Gap(Instant.FromUnixMicroseconds(newest + step)));
            place = at;
        }
        pixel.Append(bucket);
        newest = bucket.Start;
    }

    /// <summary>The line.</summary>
    public IReadOnlyList<SeriesPoint> Build()
    {
        Finish();
        return points;
    }

    private void Finish()
    {
        if (pixel.Count > 0)
            points.Add(new SeriesPoint(
                Instant.FromUnixMicroseconds(pixel.Start), (int)pixel.Count, (int)pixel.Good, pixel.Min, pixel.Mean, pixel.Max, pixel.Last));
        pixel = default;
    }
}
