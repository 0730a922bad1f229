using System.Collections.Immutable;

namespace PlantWatch.Core.Plant;

/// <summary>The last packets of each session: a redelivered one that is remembered here was taken before and is a duplicate.</summary>
/// <remarks>
/// A packet identifier comes round again after 65535 packets, so a memory older than half of that is not believed; the reading
/// is then stored, and the promise is at-least-once. Capacity exceeds the receive window granted to any broker. Every session has a
/// right to an equal share of it, so that many busy devices do not push out the last packets of one that lost its connection.
/// </remarks>
public sealed record PacketMemory
{
    /// <summary>Packets remembered in all.</summary>
    public const int Capacity = 4096;

    /// <summary>Sessions remembered in all. The share of each, when there are so many, still holds what a plain device has on its way at once.</summary>
    public const int MostSessions = 1024;

    /// <summary>Nothing remembered.</summary>
    public static PacketMemory Empty { get; } = new();

    /// <summary>Names of the sessions heard, in order of first packet.</summary>
    public ImmutableArray<string> Sessions { get; init; } = [];

    /// <summary>Newest ordinal of each session, in the order of <see cref="Sessions"/>: the door goes on counting from here.</summary>
    public ImmutableArray<long> Ordinals { get; init; } = [];

    /// <summary>Remembered packets, oldest first.</summary>
    public PacketTrail Recent { get; init; } = PacketTrail.Empty;
}

/// <summary>A packet whose content was taken.</summary>
/// <param name="Session">Index into <see cref="PacketMemory.Sessions"/>.</param>
/// <param name="PacketId">MQTT packet identifier.</param>
/// <param name="Ordinal">Its count in the session.</param>
/// <param name="ContentHash">Hash of topic and payload.</param>
public readonly record struct RememberedPacket(int Session, int PacketId, long Ordinal, ulong ContentHash);
