namespace PlantWatch.Server.Upkeep;

/// <summary>Whether the clock of the machine has gone steadily for a while, so that nothing is let go because it was set wrong.</summary>
/// <param name="clock">The clock.</param>
internal sealed class SteadyClock(TimeProvider clock)
{
    /// <summary>How long it must have gone without a step.</summary>
    public static readonly TimeSpan Needed = TimeSpan.FromHours(1);

    // What a time service moves it by bit by bit stays below; a step does not.
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(1);

    private (DateTimeOffset Wall, long Counter) _seen = (clock.GetUtcNow(), clock.GetTimestamp());
    private long _since = clock.GetTimestamp();

    /// <summary>Looks at it. To be asked every few minutes.</summary>
    public bool IsSteady()
    {
        var (wall, counter) = (clock.GetUtcNow(), clock.GetTimestamp());
        var (gone, counted) = (wall - _seen.Wall, clock.GetElapsedTime(_seen.Counter, counter));
        if ((gone - counted).Duration() > Step) _since = counter;
        _seen = (wall, counter);
        return clock.GetElapsedTime(_since, counter) >= Needed;
    }
}
