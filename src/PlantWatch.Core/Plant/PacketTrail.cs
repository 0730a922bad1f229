using System.Collections;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Plant;

/// <summary>Remembered packets, oldest first. Immutable; written as a plain array.</summary>
/// <remarks>
/// Nearly every batch is one message that adds one packet to thousands, so a copy a batch would be most of the fold's work. A trail
/// therefore shares its shelf with the trail it grew from, which ends before the new entries and never sees them. Packets of a session
/// are forgotten in their order, so two counts a session say which entries still hold. Only one at a time may fill the free places of a
/// shelf; whoever else grows the same trail takes a copy.
/// </remarks>
[JsonConverter(typeof(PacketTrailJson))]
public sealed class PacketTrail : IEnumerable<RememberedPacket>
{
    private readonly PacketShelf _shelf;
    private readonly int _start;
    private readonly int _end;
    private readonly int[] _said;
    private readonly int[] _held;

    internal PacketTrail(PacketShelf shelf, int start, int end, int length, int[] said, int[] held) =>
        (_shelf, _start, _end, Length, _said, _held) = (shelf, start, end, length, said, held);

    /// <summary>Nothing remembered.</summary>
    public static PacketTrail Empty { get; } = new(new PacketShelf(0), 0, 0, 0, [], []);

    /// <summary>Packets in it.</summary>
    public int Length { get; }

    /// <summary>A trail of these packets.</summary>
    public static PacketTrail Of(IEnumerable<RememberedPacket> packets)
    {
        ArgumentNullException.ThrowIfNull(packets);
        var growing = Empty.Grow();
        foreach (var packet in packets) growing.Add(packet);
        return growing.Seal();
    }

    /// <inheritdoc/>
    public IEnumerator<RememberedPacket> GetEnumerator()
    {
        // A list and no iterator: those ask their environment for the thread they run on, and Core asks for nothing.
        var packets = new List<RememberedPacket>(Length);
        for (var i = _start; i < _end; i++)
            if (_shelf.Holds(i, _said, _held)) packets.Add(_shelf.Places[i].Packet);
        return packets.GetEnumerator();
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>What this trail becomes.</summary>
    public GrowingTrail Grow() => new(_shelf, _start, _end, Length, _said, _held);

    private sealed class PacketTrailJson : JsonConverter<PacketTrail>
    {
        public override PacketTrail Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Of(JsonSerializer.Deserialize<RememberedPacket[]>(ref reader, options) ?? []);

        public override void Write(Utf8JsonWriter writer, PacketTrail value, JsonSerializerOptions options)
        {
            writer.WriteStartArray();
            foreach (var packet in value) JsonSerializer.Serialize(writer, packet, options);
            writer.WriteEndArray();
        }
    }
}
