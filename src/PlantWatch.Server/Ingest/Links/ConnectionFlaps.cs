using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>Counts how often a connection that stood was lost. mosquitto 2.0.11 takes a session away without a word; that it happens again and again is all that can be seen of it.</summary>
internal sealed class ConnectionFlaps
{
    /// <summary>So many in the window are no accident. A broker that restarts makes one, a bad cable some.</summary>
    public const int Usual = 3;

    /// <summary>How far back it counts: our waits between attempts grow from half a second to half a minute.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(5);

    private readonly Queue<Instant> _lost = [];

    /// <summary>One more was lost; true when these are more than usual.</summary>
    public bool Lost(Instant now)
    {
        _lost.Enqueue(now);
        while (now - _lost.Peek() > Window) _lost.Dequeue();
        return _lost.Count > Usual;
    }
}
