using System.Text;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>What a message of the Sparkplug B namespace is (Sparkplug 3.0.0, chapter 4).</summary>
public enum SparkplugKind : byte
{
    /// <summary>No message.</summary>
    None = 0,
    /// <summary>NBIRTH: an edge node is there, and these are all its metrics.</summary>
    NodeBirth,
    /// <summary>NDEATH: an edge node is gone, as a rule said by the broker.</summary>
    NodeDeath,
    /// <summary>NDATA: metrics of the edge node itself.</summary>
    NodeData,
    /// <summary>NCMD: a command to the edge node.</summary>
    NodeCommand,
    /// <summary>DBIRTH: a device behind an edge node is there, and these are all its metrics.</summary>
    DeviceBirth,
    /// <summary>DDEATH: the edge node has lost a device.</summary>
    DeviceDeath,
    /// <summary>DDATA: metrics of a device.</summary>
    DeviceData,
    /// <summary>DCMD: a command to a device.</summary>
    DeviceCommand,
    /// <summary>STATE: whether a host application is there.</summary>
    HostState,
}

/// <summary>Why a topic is none of the namespace: a closed list, each with a test.</summary>
public enum TopicFault : byte
{
    /// <summary>Nothing is wrong.</summary>
    None = 0,
    /// <summary>Its first level is not spBv1.0.</summary>
    OtherNamespace,
    /// <summary>The level that says the kind is none of the nine.</summary>
    UnknownKind,
    /// <summary>A level is missing: a device's kind without a device, or less.</summary>
    MissingLevel,
    /// <summary>A level too many: a node's kind with a device, or more.</summary>
    ExtraLevel,
    /// <summary>An id of no characters.</summary>
    EmptyId,
    /// <summary>An id with a wildcard, + or #.</summary>
    ReservedCharacter,
    /// <summary>Half a surrogate pair or U+0000, which no UTF-8 of MQTT can hold.</summary>
    NotText,
    /// <summary>Longer than <see cref="SparkplugTopic.Longest"/>.</summary>
    TooLong,
}

/// <summary>A topic of the namespace, taken apart. The default is of <see cref="SparkplugKind.None"/> and of nobody.</summary>
/// <param name="Kind">What its messages are.</param>
/// <param name="Group">The group id; empty for a host's state.</param>
/// <param name="Node">The edge node's id, or the host's.</param>
/// <param name="Device">The device's id; empty where the kind is not a device's.</param>
public readonly record struct SparkplugTopic(SparkplugKind Kind, string Group, string Node, string Device)
{
    /// <summary>The first level of every topic.</summary>
    public const string Namespace = "spBv1.0";

    /// <summary>Most characters of a topic. MQTT allows 65 535 octets; no plant needs ids that are longer than this together.</summary>
    public const int Longest = 1024;

    private const string State = "STATE";

    /// <summary>Whether the kind is a device's, so that a device must be named (tck-id-topic-structure-namespace-device-id-associated-message-types).</summary>
    public bool IsOfDevice => Kind is >= SparkplugKind.DeviceBirth and <= SparkplugKind.DeviceCommand;

    /// <summary>Takes a topic apart; false with the reason where it is none of the namespace.</summary>
    /// <exception cref="ArgumentNullException">No text.</exception>
    public static bool TryParse(string text, out SparkplugTopic topic, out TopicFault fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        topic = default;
        if (text.Length > Longest) fault = TopicFault.TooLong;
        else if (text.Contains('\0') || !IsText(text)) fault = TopicFault.NotText;
        else fault = Take(text.Split('/'), out topic);
        if (fault != TopicFault.None) topic = default;
        return fault == TopicFault.None;
    }

    /// <summary>The topic as it goes over the wire.</summary>
    public override string ToString() => Kind switch
    {
        SparkplugKind.None => "",
        SparkplugKind.HostState => $"{Namespace}/{State}/{Node}",
        _ => $"{Namespace}/{Group}/{Verbs[(int)Kind]}/{Node}" + (IsOfDevice ? $"/{Device}" : ""),
    };

    private static readonly string[] Verbs = ["", "NBIRTH", "NDEATH", "NDATA", "NCMD", "DBIRTH", "DDEATH", "DDATA", "DCMD"];

    private static TopicFault Take(string[] levels, out SparkplugTopic topic)
    {
        topic = default;
        if (levels[0] != Namespace) return TopicFault.OtherNamespace;
        if (levels.Length < 3) return TopicFault.MissingLevel;
        // A group of this name could not be told from a host.
        if (levels[1] == State) topic = new(SparkplugKind.HostState, "", levels[2], "");
        else if (Array.IndexOf(Verbs, levels[2]) is var verb and > 0) topic = new((SparkplugKind)verb, levels[1], levels.ElementAtOrDefault(3) ?? "", levels.ElementAtOrDefault(4) ?? "");
        else return TopicFault.UnknownKind;
        var due = topic.Kind == SparkplugKind.HostState ? 3 : topic.IsOfDevice ? 5 : 4;
        if (levels.Length != due) return levels.Length < due ? TopicFault.MissingLevel : TopicFault.ExtraLevel;
        if (levels.Any(l => l.Length == 0)) return TopicFault.EmptyId;
        return levels.Any(l => l.AsSpan().IndexOfAny('+', '#') >= 0) ? TopicFault.ReservedCharacter : TopicFault.None;
    }

    private static bool IsText(ReadOnlySpan<char> text)
    {
        while (!text.IsEmpty)
        {
            if (Rune.DecodeFromUtf16(text, out _, out var length) != System.Buffers.OperationStatus.Done) return false;
            text = text[length..];
        }

        return true;
    }
}
