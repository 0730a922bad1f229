using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest;

/// <summary>Remembers what was last heard on topics, so that a person can pick from them: a few hundred, the newest, in memory alone. It keeps nothing of the record.</summary>
internal sealed class TopicEar
{
    /// <summary>Most topics that are remembered; the one that was silent longest gives way.</summary>
    public const int Most = 500;

    /// <summary>Characters of a topic that is remembered at all: a plant file takes no longer one.</summary>
    public const int LongestTopic = 1000;

    /// <summary>Bytes of a payload that are remembered.</summary>
    public const int MostBytes = 4096;

    /// <summary>How long it listens after it was last asked.</summary>
    public static readonly TimeSpan Attention = TimeSpan.FromMinutes(2);

    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<HeardTopic>> _byName = new(StringComparer.Ordinal);
    private readonly LinkedList<HeardTopic> _oldestFirst = [];
    private Instant _askedAt = Instant.Never;

    /// <summary>Topics that gave way to newer ones since somebody began to ask.</summary>
    public long Forgotten { get; private set; }

    /// <summary>Raised when somebody asks after nobody did.</summary>
    public event Action? Wanted;

    /// <summary>True while somebody listens.</summary>
    public bool IsWanted(Instant now)
    {
        lock (_gate) return _askedAt.IsSet && now - _askedAt <= Attention;
    }

    /// <summary>Takes a message, where somebody listens.</summary>
    public void Hear(in IncomingMessage message, Instant at)
    {
        if (message.Topic.Length > LongestTopic) return;
        lock (_gate)
        {
            if (!_askedAt.IsSet || at - _askedAt > Attention) return;
            Remember(message, at);
        }
    }

    /// <summary>What was heard since somebody began to ask, newest first; asking keeps it listening.</summary>
    public IReadOnlyList<HeardTopic> Ask(Instant now)
    {
        bool woke;
        HeardTopic[] heard;
        lock (_gate)
        {
            woke = !_askedAt.IsSet || now - _askedAt > Attention;
            if (woke) Forget();
            _askedAt = now;
            heard = [.. _oldestFirst.Reverse()];
        }

        if (woke) Wanted?.Invoke();
        return heard;
    }

    // What came in between was not heard: a topic that seems to speak once an hour would have it set as its interval.
    private void Forget()
    {
        _byName.Clear();
        _oldestFirst.Clear();
        Forgotten = 0;
    }

    private void Remember(in IncomingMessage message, Instant at)
    {
        var bytes = message.Payload.Length <= MostBytes ? message.Payload.ToArray() : message.Payload[..MostBytes].ToArray();
        if (_byName.Remove(message.Topic, out var known)) _oldestFirst.Remove(known);
        var next = known is null ? new HeardTopic(message.Topic, bytes, message.Payload.Length, message.Retained, at, at, 1)
            : known.Value with { Payload = bytes, Bytes = message.Payload.Length, Retained = message.Retained, LastAt = at, Count = known.Value.Count + 1 };
        _byName[message.Topic] = _oldestFirst.AddLast(next);
        if (_byName.Count <= Most) return;
        _byName.Remove(_oldestFirst.First!.Value.Topic);
        _oldestFirst.RemoveFirst();
        Forgotten++;
    }
}

/// <summary>A topic as it was heard.</summary>
/// <param name="Topic">Its name.</param>
/// <param name="Payload">The newest payload, its beginning where it is long.</param>
/// <param name="Bytes">How long it was.</param>
/// <param name="Retained">It is a last value that the broker keeps and no new sample.</param>
/// <param name="FirstAt">When it was first heard, since somebody began to ask.</param>
/// <param name="LastAt">When it was last heard.</param>
/// <param name="Count">How often since then.</param>
internal sealed record HeardTopic(string Topic, ReadOnlyMemory<byte> Payload, int Bytes, bool Retained, Instant FirstAt, Instant LastAt, long Count);
