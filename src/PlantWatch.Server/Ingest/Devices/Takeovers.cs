using System.Net;
using MQTTnet.Formatter;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest.Devices;

/// <summary>A device as it is connected.</summary>
/// <param name="From">Its address.</param>
/// <param name="Version">Of the protocol.</param>
internal sealed record Connected(EndPoint? From, MqttProtocolVersion Version);

/// <summary>Who is connected, and who took a connection over from whom. The newcomer wins (MQTT-3.1.4-3); two that do it to each other again and again are told.</summary>
internal sealed class Takeovers
{
    /// <summary>So many in a minute are no device that comes back: two share an id.</summary>
    public const int Usual = 5;

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Told = TimeSpan.FromHours(1);

    private readonly Lock _gate = new();
    private readonly Dictionary<string, Connected> _live = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Queue<Instant>> _recent = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (string Who, Instant At)> _flapping = new(StringComparer.Ordinal);

    /// <summary>A client connected; gives the one whose place it took, null for nobody.</summary>
    public Connected? Enter(string clientId, Connected newcomer, Instant now)
    {
        lock (_gate)
        {
            var before = _live.GetValueOrDefault(clientId);
            _live[clientId] = newcomer;
            if (before is not null) Count(clientId, before, newcomer, now);
            return before;
        }
    }

    /// <summary>A client left, and nobody took its place.</summary>
    public void Leave(string clientId)
    {
        lock (_gate) _live.Remove(clientId);
    }

    /// <summary>The client that is connected; null for none.</summary>
    public Connected? Find(string clientId)
    {
        lock (_gate) return _live.GetValueOrDefault(clientId);
    }

    /// <summary>Pairs that took over from each other more often than usual, within the last hour.</summary>
    public IReadOnlyList<(string ClientId, string Who, Instant At)> Flapping(Instant now)
    {
        lock (_gate) return [.. _flapping.Where(f => now - f.Value.At <= Told).OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => (f.Key, f.Value.Who, f.Value.At))];
    }

    private void Count(string clientId, Connected before, Connected newcomer, Instant now)
    {
        // Names are many, those that take over are few; old ones are dropped with the first that comes later.
        foreach (var old in _recent.Where(r => now - r.Value.Last() > Window).Select(r => r.Key).ToList()) _recent.Remove(old);
        if (!_recent.TryGetValue(clientId, out var times)) _recent[clientId] = times = [];
        times.Enqueue(now);
        while (now - times.Peek() > Window) times.Dequeue();
        if (times.Count > Usual) _flapping[clientId] = ($"{before.From} / {newcomer.From}", now);
    }
}
