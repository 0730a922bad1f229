using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>Turns buckets in time order into at most a point for each pixel, with silences as gaps.</summary>
/// <remarks>A silence that begins and ends within one pixel cannot be drawn and is none.</remarks>
internal sealed class LineBuilder
{
    /// <summary>So many expected intervals of silence make a gap: one late reading does not, two missed ones do.</summary>
    private const double Patience = 2.5;

    private readonly long _from;
    private readonly int _width;
    private readonly long _range;
    private readonly double _longestSilence;
    private readonly long _step;
    private readonly List<SeriesPoint> _points = [];
    private Bucket _pixel;
    private int _place = -1;
    private long _newest;

    public LineBuilder(SeriesQuery query, Tier tier)
    {
        _from = query.From.UnixMicroseconds;
        _width = query.Width;
        _range = query.To.UnixMicroseconds - _from;
        _step = Math.Max(Tiers.SpanOf(tier), query.Expected.Ticks / 10);
        // Of a raw series with no expectation nobody can say that it is silent.
        _longestSilence = _step > 0 ? Patience * _step : double.PositiveInfinity;
    }

    /// <summary>Takes the next bucket.</summary>
    public void Add(in Bucket bucket)
    {
        // A bucket that began before the range belongs to the first pixel.
        var at = bucket.Start < _from ? 0 : (int)((UInt128)(bucket.Start - _from) * (uint)_width / (UInt128)_range);
        if (at != _place)
        {
            Finish();
            if (_place >= 0 && bucket.Start - _newest > _longestSilence) _points.Add(SeriesPoint.Gap(Instant.FromUnixMicroseconds(_newest + _step)));
            _place = at;
        }
        _pixel.Append(bucket);
        _newest = bucket.Start;
    }

    /// <summary>The line.</summary>
    public IReadOnlyList<SeriesPoint> Build()
    {
        Finish();
        return _points;
    }

    private void Finish()
    {
        if (_pixel.Count > 0)
            _points.Add(new SeriesPoint(
                Instant.FromUnixMicroseconds(_pixel.Start), (int)_pixel.Count, (int)_pixel.Good, _pixel.Min, _pixel.Mean, _pixel.Max, _pixel.Last));
        _pixel = default;
    }
}
