namespace PlantWatch.Core.Readings;

/// <summary>What identifies one PUBLISH packet, so that a redelivery after a crash can be told from a new reading with the same value.</summary>
/// <param name="Session">Client id, and for an external broker the id of our session there.</param>
/// <param name="PacketId">MQTT packet identifier, 1 to 65535; 0 at QoS 0, where nothing can be told.</param>
/// <param name="Ordinal">Count of packets in this session; the packet identifier comes round again after 65535 of them.</param>
/// <param name="Redelivered">The DUP flag of MQTT.</param>
public sealed record PacketIdentity(string Session, int PacketId, long Ordinal, bool Redelivered);
