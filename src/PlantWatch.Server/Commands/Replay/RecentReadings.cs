using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The readings of the last day of a series, from which the window around a sample is read, as the record answers it live.</summary>
internal sealed class RecentReadings(string series, TimeSpan remembered)
{
    private readonly Queue<(Instant At, double Value, Quality Quality)> _readings = new();

    /// <summary>Time of the newest reading.</summary>
    public Instant Newest { get; private set; }

    /// <summary>A reading.</summary>
    public void Add(Instant at, double value, Quality quality)
    {
        _readings.Enqueue((at, value, quality));
        Newest = at;
        while (_readings.Count > 0 && at - _readings.Peek().At > remembered) _readings.Dequeue();
    }

    /// <summary>What the series did between two times.</summary>
    public ProbeWindow Window(Instant from, Instant to)
    {
        var sums = new WindowSums();
        foreach (var (at, value, quality) in _readings)
            if (at >= from && at < to) sums.Add(at.UnixMicroseconds, value, quality);
        return sums.Close(series, from, to);
    }
}
