using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Loop;

/// <summary>The one way in. Ingest and the interface hand events over here and learn when they are durable.</summary>
internal interface IDoor
{
    /// <summary>Topics of the plant file now in force, for a client that must subscribe.</summary>
    IReadOnlyCollection<string> Topics { get; }

    /// <summary>True for a topic on which the plant itself tells of alarms: what arrives there is no reading.</summary>
    bool IsOwn(string topic);

    /// <summary>Raised after a plant file came into force.</summary>
    event Action? TopicsChanged;

    /// <summary>
    /// Takes a message. The outer task ends when it has a place in the bounded inbox (that is the back-pressure); the inner task ends
    /// when every circuit concerned has committed it, and only then may it be acknowledged. The inner task is cancelled when the server stops first.
    /// </summary>
    ValueTask<Task> MessageAsync(IncomingMessage message, CancellationToken cancellation);

    /// <summary>Hands an event to a circuit and waits until it is committed; gives the answer of Step.</summary>
    Task<Outcome> SendAsync(string circuit, Func<Instant, PlantEvent> make, CancellationToken cancellation);

    /// <summary>Tells every circuit that the broker lost our session.</summary>
    Task SessionLostAsync(string session, Instant since, CancellationToken cancellation);
}

/// <summary>A message as a broker handed it over. The door stamps time and packet ordinal.</summary>
/// <param name="Topic">Topic.</param>
/// <param name="Payload">Bytes; must stay valid until committed, so copy pooled memory.</param>
/// <param name="Retained">RETAIN flag.</param>
/// <param name="Session">Client id that identifies the packet's session.</param>
/// <param name="PacketId">Packet identifier; 0 at QoS 0.</param>
/// <param name="Redelivered">DUP flag.</param>
internal readonly record struct IncomingMessage(string Topic, ReadOnlyMemory<byte> Payload, bool Retained, string Session, int PacketId, bool Redelivered);
