namespace PlantWatch.Core.Readings;

/// <summary>The closing sums of one circuit, in items: a plain number is one item, a SenML pack one for each record, an unreadable payload one.</summary>
/// <remarks>Always: Received = Stored + Duplicates + Refused. What the door holds and Step has not yet seen is in flight and counted there.</remarks>
public sealed record Ledger
{
    /// <summary>Messages that entered Step.</summary>
    public long Messages { get; init; }

    /// <summary>Items those messages carried.</summary>
    public long Received { get; init; }

    /// <summary>Items stored as readings.</summary>
    public long Stored => StoredByDeviceTime + StoredByPacket + StoredAtLeastOnce;

    /// <summary>Stored, and identified by the device's own time: exactly once.</summary>
    public long StoredByDeviceTime { get; init; }

    /// <summary>Stored, and identified by their packet: exactly once as long as the session lives.</summary>
    public long StoredByPacket { get; init; }

    /// <summary>Stored with neither device time nor packet (QoS 0): a repeat could not be told.</summary>
    public long StoredAtLeastOnce { get; init; }

    /// <summary>Items already stored before.</summary>
    public long Duplicates { get; init; }

    /// <summary>Items refused, kept with their bytes.</summary>
    public long Refused { get; init; }
}
