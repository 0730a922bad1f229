using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Series;

/// <summary>When the next page is written. Only decides; the loop obeys.</summary>
/// <remarks>Attempts are spaced as those at a broker, for ever; a server that asks for more rest gets it, up to ten minutes.</remarks>
internal sealed class FeedPace
{
    /// <summary>Between two looks while nothing is owed: a reading is in InfluxDB about so much after its commit.</summary>
    public static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    /// <summary>Longest rest a server may ask for.</summary>
    public static readonly TimeSpan LongestRest = TimeSpan.FromMinutes(10);

    private ReconnectPolicy _policy = new();

    /// <summary>Attempts that failed in a row.</summary>
    public int Failures { get; private set; }

    /// <summary>A page was taken, or nothing is owed.</summary>
    /// <param name="isMore">More is owed.</param>
    public TimeSpan AfterSuccess(bool isMore)
    {
        (Failures, _policy) = (0, new());
        return isMore ? TimeSpan.Zero : Beat;
    }

    /// <summary>A page was not taken.</summary>
    /// <param name="notBefore">Rest that the server asks for.</param>
    /// <param name="chance">From 0 to 1: where in the upper half of the wait to land.</param>
    public TimeSpan AfterFailure(TimeSpan notBefore, double chance)
    {
        Failures++;
        var (wait, rest) = (_policy.Next(TimeSpan.Zero, chance), notBefore < LongestRest ? notBefore : LongestRest);
        return wait > rest ? wait : rest;
    }
}
