namespace PlantWatch.Server.Telling;

/// <summary>Publishes on the broker what the plant says of itself; none of it ever becomes a reading.</summary>
internal interface IAlarmTopic
{
    /// <summary>Returns when the broker has taken it, and throws when it has not.</summary>
    Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, CancellationToken cancellation);
}
