namespace PlantWatch.Server.Ingest;

/// <summary>How long to wait before the next attempt at a broker: doubling from half a second to half a minute, for ever, spread so that many servers do not come at once.</summary>
/// <remarks>Only decides; the loop obeys. Chance and durations are arguments, so that it can be tested with numbers.</remarks>
internal sealed class ReconnectPolicy
{
    /// <summary>Longest first wait.</summary>
    public static readonly TimeSpan First = TimeSpan.FromMilliseconds(500);

    /// <summary>Longest wait of all. A broker that is back is noticed within it.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);

    /// <summary>A connection that held this long was a good one: the count begins anew. A shorter one counts as a failure, or a broker that drops us at once would be stormed.</summary>
    public static readonly TimeSpan GoodConnection = TimeSpan.FromSeconds(30);

    // Beyond this the doubling is past the longest wait, and further doubling would only overflow.
    private const int MostDoublings = 6;

    private int _failures;

    /// <summary>The wait before the next attempt.</summary>
    /// <param name="lasted">How long the connection held; zero when there was none.</param>
    /// <param name="chance">From 0 to 1: where in the upper half of the wait to land.</param>
    public TimeSpan Next(TimeSpan lasted, double chance)
    {
        if (lasted >= GoodConnection) _failures = 0;
        var full = First * Math.Pow(2, _failures);
        if (_failures < MostDoublings) _failures++;
        return (full < Longest ? full : Longest) * (0.5 + (0.5 * chance));
    }
}
