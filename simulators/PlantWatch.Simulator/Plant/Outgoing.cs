namespace PlantWatch.Simulator.Plant;

/// <summary>One MQTT message to be sent.</summary>
/// <param name="At">Simulated time at which it leaves.</param>
/// <param name="Gateway">Connection it leaves by.</param>
/// <param name="Topic">Topic.</param>
/// <param name="Payload">Bytes.</param>
/// <param name="Values">How many readings it carries.</param>
internal sealed record Outgoing(DateTimeOffset At, string Gateway, string Topic, byte[] Payload, int Values);
