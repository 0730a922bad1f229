using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>What was seen of an edge node beside readings: a closed list, each with a test. What is refused begins at <see cref="Undecodable"/>.</summary>
public enum SparkNoteKind : byte
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>A birth: the node is online. The detail is its bdSeq.</summary>
    NodeOnline,
    /// <summary>A death that is this session's: the node, its devices and all their metrics are stale, by our clock.</summary>
    NodeOffline,
    /// <summary>A device's birth.</summary>
    DeviceOnline,
    /// <summary>A device's death, by its payload's time; or its node was born anew and it has not been yet.</summary>
    DeviceOffline,
    /// <summary>A message came before one that is due; the wait for it begins. The detail is both numbers.</summary>
    GapOpened,
    /// <summary>What was waited for has come.</summary>
    GapClosed,
    /// <summary>It has not come in time: all metrics are stale, and what waited is read. The detail is how many are missing.</summary>
    MessagesLost,
    /// <summary>A death of another session, or of one that has ended: ignored. The detail is its bdSeq.</summary>
    DeathIgnored,
    /// <summary>One alias for two metrics of the node: it stands for neither from now on.</summary>
    AliasTwice,
    /// <summary>A value that must not be stored.</summary>
    Transient,
    /// <summary>Refused: the payload could not be read. The detail names the <see cref="SparkplugFault"/>.</summary>
    Undecodable = 100,
    /// <summary>Refused: the node has not been born, or has died.</summary>
    BeforeBirth,
    /// <summary>Refused: the device has not been born, or has died.</summary>
    DeviceBeforeBirth,
    /// <summary>Refused: a message without a sequence number, which has no place in the order.</summary>
    WithoutSequence,
    /// <summary>Refused: its number was taken before, and it is not newer.</summary>
    Repeated,
    /// <summary>Refused: more metrics than are kept of one node.</summary>
    NodeTooLarge,
    /// <summary>Refused: a metric with neither name nor alias, or without a name in a birth.</summary>
    WithoutName,
    /// <summary>Refused: a name that the birth did not give.</summary>
    UnknownName,
    /// <summary>Refused: an alias that no birth gave, or gave to two.</summary>
    UnknownAlias,
    /// <summary>Refused: the birth gave the metric no data type.</summary>
    WithoutType,
    /// <summary>Refused: another data type than the birth's.</summary>
    WrongType,
    /// <summary>Refused: said to be null. The metric is stale.</summary>
    Null,
    /// <summary>Refused: no value, and not said to be null.</summary>
    WithoutValue,
    /// <summary>Refused: the value is no number of its type. The detail names the <see cref="NumberFault"/>.</summary>
    WithoutNumber,
    /// <summary>Refused: a time that no calendar writes.</summary>
    WrongTime,
}

/// <summary>One note. The default is of nothing.</summary>
/// <param name="Kind">What.</param>
/// <param name="Device">Of which device; empty for the node itself.</param>
/// <param name="Metric">Of which metric; empty for a whole message.</param>
/// <param name="At">When it holds from: our clock, and the payload's for a device's death.</param>
/// <param name="Detail">The figure or the name at fault; may be empty.</param>
public readonly record struct SparkNote(SparkNoteKind Kind, string Device, string Metric, Instant At, string Detail)
{
    /// <summary>Whether something that arrived was not taken.</summary>
    public bool IsRefusal => Kind >= SparkNoteKind.Undecodable;
}

/// <summary>A reading of one metric, not yet of a probe.</summary>
/// <param name="Device">The device; empty for the node itself.</param>
/// <param name="Metric">The metric's name, as the birth gave it.</param>
/// <param name="MeasuredAt">The metric's time, else the payload's, else ours.</param>
/// <param name="ReceivedAt">When its message came in.</param>
/// <param name="Value">Finite; a switch is 0 or 1.</param>
/// <param name="Quality">Received; late where it is of the past (is_historical); suspect where its own quality is not good, or where its alias may have changed in a gap.</param>
public readonly record struct SparkReading(string Device, string Metric, Instant MeasuredAt, Instant ReceivedAt, double Value, Quality Quality);
