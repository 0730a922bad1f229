using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>The effect that an edge node should be asked to say its births anew. Only ever given where it is allowed, and not too often.</summary>
/// <remarks>It is the only message to a plant's network that PlantWatch can form: it moves nothing and writes no value of the process.</remarks>
/// <param name="Group">The node's group.</param>
/// <param name="Node">The node.</param>
public sealed record RebirthWanted(string Group, string Node)
{
    /// <summary>Where the request goes: NCMD (tck-id-operational-behavior-data-commands-ncmd-rebirth-verb).</summary>
    public SparkplugTopic Topic => new(SparkplugKind.NodeCommand, Group, Node, "");

    /// <summary>The request: one metric, by its name, a switch that is on, and no sequence number (tck-id-payloads-ncmd-seq).</summary>
    /// <param name="now">When it is sent; 1970 or later.</param>
    public byte[] ToPayload(Instant now)
    {
        byte[] time = Varint((ulong)Math.Max(0, now.UnixMilliseconds));
        byte[] metric = [0x0a, (byte)Name.Length, .. Name, 0x18, .. time, 0x20, (byte)SparkplugType.Boolean, 0x70, 1];
        return [0x08, .. time, 0x12, (byte)metric.Length, .. metric];
    }

    private static ReadOnlySpan<byte> Name => "Node Control/Rebirth"u8;

    private static byte[] Varint(ulong value)
    {
        List<byte> bytes = [];
        for (; value >= 0x80; value >>= 7) bytes.Add((byte)(value | 0x80));
        return [.. bytes, (byte)value];
    }
}
