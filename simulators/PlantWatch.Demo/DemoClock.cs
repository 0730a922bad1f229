namespace PlantWatch.Demo;

/// <summary>The server's clock while history is fed: it stands where the simulated plant stands, and becomes the real one afterwards. It never runs back.</summary>
/// <remarks>Only the time of day is changed. Timers and durations stay real, so that nothing in the server waits for a clock that waits for the server.</remarks>
internal sealed class DemoClock(DateTimeOffset start) : TimeProvider
{
    private long _ticks = start.UtcTicks;
    private volatile bool _live;

    /// <summary>True once it is the real clock.</summary>
    public bool IsLive => _live;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow()
    {
        var held = Interlocked.Read(ref _ticks);
        return _live ? new(Math.Max(held, System.GetUtcNow().UtcTicks), TimeSpan.Zero) : new(held, TimeSpan.Zero);
    }

    /// <summary>Moves on to a time of the history.</summary>
    public void MoveTo(DateTimeOffset time)
    {
        if (!_live && time.UtcTicks > Interlocked.Read(ref _ticks)) Interlocked.Exchange(ref _ticks, time.UtcTicks);
    }

    /// <summary>From now on it is the real clock.</summary>
    public void GoLive() => _live = true;
}
