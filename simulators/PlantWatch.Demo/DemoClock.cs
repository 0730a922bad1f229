namespace PlantWatch.Demo;

/// <summary>The server's clock while history is fed: it stands where the simulated plant stands, and becomes the real one afterwards. It never runs back.</summary>
/// <remarks>Only the time of day is changed. Timers and durations stay real, so that nothing in the server waits for a clock that waits for the server.</remarks>
internal sealed class DemoClock(DateTimeOffset start) : TimeProvider
{
    private long ticks = start.UtcTicks;
    private volatile bool live;

    /// <summary>True once it is the real clock.</summary>
    public bool IsLive => live;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow()
    {
        var held = Interlocked.Read(ref ticks);
        return live ? new(Math.Max(held, System.GetUtcNow().UtcTicks), TimeSpan.Zero) : new(held, TimeSpan.Zero);
    }

    /// <summary>Moves on to a time of the history.</summary>
    public void MoveTo(DateTimeOffset time)
    {
        if (!live && time.UtcTicks > Interlocked.Read(ref ticks)) Interlocked.Exchange(ref ticks, time.UtcTicks);
    }

    /// <summary>From now on it is the real clock.</summary>
    public void GoLive() => live = true;
}
