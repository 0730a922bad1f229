using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Whether an edge node is there.</summary>
public enum SparkLife : byte
{
    /// <summary>Nothing was heard of it that says so.</summary>
    Unborn = 0,
    /// <summary>Born, and not dead.</summary>
    Online,
    /// <summary>Dead.</summary>
    Offline,
}

/// <summary>What the host does about gaps and rebirths.</summary>
public sealed record SparkRules
{
    /// <summary>How long a message that is missing is waited for (tck-id-operational-behavior-host-reordering-param): a couple of seconds; nought where the broker keeps the order.</summary>
    public TimeSpan ReorderTimeout { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>Whether a rebirth may be asked for: it is a write to the plant's network, so only where it was allowed.</summary>
    public bool MayAskForRebirth { get; init; }

    /// <summary>Least time between two requests to one node.</summary>
    public TimeSpan RebirthEvery { get; init; } = TimeSpan.FromMinutes(1);
}

/// <summary>A metric that a birth has told of.</summary>
/// <param name="Type">Its data type; what values later are read by.</param>
/// <param name="StaleSince">Since when its newest value is not the current one; <see cref="Instant.Never"/> while it is.</param>
public readonly record struct SparkKnownMetric(SparkplugType Type, Instant StaleSince)
{
    /// <summary>Whether its newest value is not the current one.</summary>
    public bool IsStale => StaleSince.IsSet;
}

/// <summary>A device behind an edge node, or the node itself.</summary>
/// <param name="IsOnline">Born, and not dead.</param>
/// <param name="Since">Since when that is so.</param>
/// <param name="Metrics">Its metrics by name; they stay, stale, after its death.</param>
public sealed record SparkDevice(bool IsOnline, Instant Since, ImmutableDictionary<string, SparkKnownMetric> Metrics);

/// <summary>Whose metric an alias stands for. The default stands for none, and an alias that was given twice for no other.</summary>
public readonly record struct SparkAlias(string Device, string Metric);

/// <summary>A message that came before one that is due.</summary>
public readonly record struct SparkHeld(SparkMessage Message, byte Sequence, Instant ReceivedAt);

/// <summary>A decoded message.</summary>
/// <param name="Topic">Where it came.</param>
/// <param name="Payload">What it says.</param>
public readonly record struct SparkMessage(SparkplugTopic Topic, SparkplugPayload Payload);

/// <summary>What is known of one edge node. Starts by <see cref="Of"/>.</summary>
/// <param name="Group">Its group id.</param>
/// <param name="Node">Its id.</param>
public sealed record SparkNodeState(string Group, string Node)
{
    /// <summary>Most metrics of a node and its devices that are kept.</summary>
    public const int MostMetrics = 65_536;

    /// <summary>Most devices of a node that are kept.</summary>
    public const int MostDevices = 1024;

    /// <summary>Most messages that wait for one that is missing.</summary>
    public const int MostHeld = 64;

    /// <summary>A node of which nothing is known.</summary>
    public static SparkNodeState Of(string group, string node) => new(group, node);

    /// <summary>Whether it is there.</summary>
    public SparkLife Life { get; init; }

    /// <summary>Since when.</summary>
    public Instant Since { get; init; }

    /// <summary>The bdSeq of the birth, which its death repeats; null when the birth had none.</summary>
    public ulong? BirthNumber { get; init; }

    /// <summary>When the node sent its birth, by its own clock.</summary>
    public Instant BornAt { get; init; }

    /// <summary>The sequence number that is due next.</summary>
    public byte Next { get; init; }

    /// <summary>When the newest message that was taken had been sent, by the node's clock.</summary>
    public Instant NewestSentAt { get; init; }

    /// <summary>A message was lost since the birth. It may have been another birth, so no alias is certain until the next one.</summary>
    public bool AliasesAreDoubted { get; init; }

    /// <summary>The node itself, under the empty name, and its devices.</summary>
    public ImmutableDictionary<string, SparkDevice> Devices { get; init; } = ImmutableDictionary<string, SparkDevice>.Empty;

    /// <summary>What aliases stand for: one table for the node and all its devices.</summary>
    public ImmutableDictionary<ulong, SparkAlias> Aliases { get; init; } = ImmutableDictionary<ulong, SparkAlias>.Empty;

    /// <summary>Messages that wait for one that is missing, in their order.</summary>
    public ImmutableArray<SparkHeld> Held { get; init; } = [];

    /// <summary>When a rebirth was last asked for.</summary>
    public Instant RebirthAskedAt { get; init; }

    /// <summary>Whether the newest value of a metric is not the current one; so is that of a metric nobody knows.</summary>
    public bool IsStale(string device, string metric) => !Devices.TryGetValue(device, out var known) || !known.Metrics.TryGetValue(metric, out var found) || found.IsStale;
}
