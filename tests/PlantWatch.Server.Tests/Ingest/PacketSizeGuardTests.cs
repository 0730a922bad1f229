using CsCheck;
using MQTTnet.Exceptions;
using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Tests.Ingest;

public class PacketSizeGuardTests
{
    // Remaining length 321 is 0xC1 0x02: the example of MQTT 3.1.1, section 2.2.3.
    private static readonly byte[] Announces321 = [0x30, 0xc1, 0x02];

    [Fact]
    public void A_packet_at_the_bound_passes_and_one_above_is_stopped_at_its_header()
    {
        new PacketSizeGuard(321).Watch(Announces321);

        var guard = new PacketSizeGuard(320);
        guard.Watch(Announces321.AsSpan(0, 2));
        Assert.Throws<MqttProtocolViolationException>(() => { var copy = guard; copy.Watch(Announces321.AsSpan(2)); });
    }

    [Fact]
    public void Bytes_of_a_body_are_never_taken_for_a_header()
    {
        var guard = new PacketSizeGuard(10);
        guard.Watch([0x30, 4, 0xff, 0xff, 0xff, 0x7f]); // the body looks like the longest length there is
        Assert.Throws<MqttProtocolViolationException>(() => { var copy = guard; copy.Watch([0x30, 0xff, 0xff, 0xff, 0x7f]); });
    }

    [Fact]
    public void However_the_bytes_are_cut_the_same_packets_pass() =>
        Gen.Select(Gen.Int[0, 400].Array[1, 20], Gen.Int[1, 50]).Sample((lengths, cut) =>
        {
            var bytes = lengths.SelectMany(Packet).ToArray();
            var guard = new PacketSizeGuard(300);
            var stopped = false;
            try
            {
                for (var at = 0; at < bytes.Length; at += cut) guard.Watch(bytes.AsSpan(at, Math.Min(cut, bytes.Length - at)));
            }
            catch (MqttProtocolViolationException)
            {
                stopped = true;
            }
            Assert.Equal(lengths.Any(length => length > 300), stopped);
            if (stopped) Assert.Equal(lengths.First(length => length > 300), guard.Announced);
        }, iter: 2000);

    private static IEnumerable<byte> Packet(int length)
    {
        byte[] header = length < 128 ? [0x30, (byte)length] : [0x30, (byte)(length % 128 | 0x80), (byte)(length / 128)];
        return header.Concat(Enumerable.Repeat((byte)0xff, length));
    }
}
