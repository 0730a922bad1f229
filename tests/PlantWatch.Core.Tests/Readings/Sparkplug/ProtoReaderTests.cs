using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The reader against the Protocol Buffers encoding guide (protobuf.dev/programming-guides/encoding), whose examples these are where it says so.</summary>
public class ProtoReaderTests
{
    private static List<ProtoField> Fields(byte[] bytes, out ProtoFault fault, out int at)
    {
        var proto = new ProtoReader(bytes, 0, bytes.Length);
        List<ProtoField> fields = [];
        while (proto.TryField(out var field)) fields.Add(field);
        (fault, at) = (proto.Fault, proto.FaultAt);
        Assert.False(proto.TryField(out _));
        return fields;
    }

    [Fact]
    public void The_examples_of_the_encoding_guide_are_read()
    {
        // Test1 { a: 150 }; Test2 { b: "testing" }; Test3 { c: Test1 { a: 150 } }
        Assert.Equal(new ProtoField(1, ProtoWire.Varint, 150, 0, 1, 0), Assert.Single(Fields(Hex("089601"), out _, out _)));
        Assert.Equal(new ProtoField(2, ProtoWire.Bytes, 0, 0, 2, 7), Assert.Single(Fields(Hex("120774657374696e67"), out _, out _)));
        Assert.Equal(new ProtoField(3, ProtoWire.Bytes, 0, 0, 2, 3), Assert.Single(Fields(Hex("1a03089601"), out _, out _)));
    }

    [Fact]
    public void Every_wire_type_is_read_to_its_end()
    {
        // The last but one is a group with a group in it, 5 { 6 { 1: 1 } }.
        var fields = Fields(Hex("08ffffffffffffffffff01 110100000000000080 1d01000080 2200 2b 33 0801 34 2c f8ffffff0f01"), out var fault, out _);
        Assert.Equal(ProtoFault.None, fault);
        Assert.Equal([1u, 2, 3, 4, 5, (1 << 29) - 1], fields.Select(f => f.Number));
        Assert.Equal([ulong.MaxValue, 0x8000_0000_0000_0001, 0x8000_0001, 0, 0, 1], fields.Select(f => f.Bits));
    }

    // A fault after a field that is right: the first fault stands, with its place.
    private static readonly (ProtoFault Fault, string Hex, int At)[] Faults =
    [
        (ProtoFault.Truncated, "08", 3), (ProtoFault.Truncated, "0896", 4), (ProtoFault.Truncated, "80", 3), (ProtoFault.Truncated, "11 00000000000000", 10), (ProtoFault.Truncated, "1d 000000", 6),
        (ProtoFault.Truncated, "12 02 61", 5), (ProtoFault.Truncated, "12 ffffffffffffffffff01 61", 14), (ProtoFault.Truncated, "2b", 3), (ProtoFault.Truncated, "2b 0801", 5),
        (ProtoFault.LongVarint, "08 ffffffffffffffffff02", 12), (ProtoFault.LongVarint, "08 8080808080808080808000", 12), (ProtoFault.LongVarint, "12 ffffffffffffffffff7f", 12), (ProtoFault.LongVarint, "ffffffffffffffffffff", 11),
        (ProtoFault.ReservedWire, "0e 00", 2), (ProtoFault.ReservedWire, "0f", 2), (ProtoFault.ReservedWire, "2b 0e 2c", 3),
        (ProtoFault.ReservedNumber, "00 00", 2), (ProtoFault.ReservedNumber, "02 00", 2), (ProtoFault.ReservedNumber, "8080808010 00", 2), (ProtoFault.ReservedNumber, "ffffffffffffffffff01 00", 2),
        (ProtoFault.StrayGroupEnd, "2c", 2), (ProtoFault.StrayGroupEnd, "2b 34", 3), (ProtoFault.StrayGroupEnd, "2b 33 2c 34", 4),
        (ProtoFault.TooDeep, "2b2b2b2b2b2b2b2b2b2b2b2b2b2b2b2b 2b", 18),
    ];

    public static TheoryData<ProtoFault, string, int> Wrong
    {
        get
        {
            var rows = new TheoryData<ProtoFault, string, int>();
            foreach (var (fault, hex, at) in Faults) rows.Add(fault, hex, at);
            return rows;
        }
    }

    [Theory, MemberData(nameof(Wrong))]
    public void The_first_fault_is_named_with_its_place_and_refuses_the_payload(ProtoFault expected, string hex, int at)
    {
        byte[] bytes = [.. Hex("0801"), .. Hex(hex)];
        Assert.Single(Fields(bytes, out var fault, out var place));
        Assert.Equal((expected, at), (fault, place));
        var read = SparkplugPayload.Decode(bytes);
        Assert.Equal((SparkplugFault.Malformed, $"{expected} @ {at}"), (read.Fault, read.Detail));
        Assert.Empty(read.Metrics);
    }

    [Fact]
    public void Every_fault_of_the_reader_has_its_test() => Assert.Equal(Enum.GetValues<ProtoFault>().Except([ProtoFault.None]), Faults.Select(f => f.Fault).Distinct().Order());

    [Fact]
    public void Groups_are_passed_over_to_sixteen_and_no_further()
    {
        static byte[] Nested(int depth) => [.. Enumerable.Repeat((byte)0x2b, depth), .. Enumerable.Repeat((byte)0x2c, depth)];
        Fields(Nested(ProtoReader.Deepest), out var fault, out _);
        Assert.Equal(ProtoFault.None, fault);
        Fields(Nested(ProtoReader.Deepest + 1), out fault, out _);
        Assert.Equal(ProtoFault.TooDeep, fault);
        Fields([.. Enumerable.Repeat((byte)0x2b, 1_000_000)], out fault, out _);
        Assert.Equal(ProtoFault.TooDeep, fault);
    }

    [Fact]
    public void A_message_within_ends_where_its_length_says_and_its_places_are_the_payloads()
    {
        // A metric of two bytes whose text says three.
        var read = SparkplugPayload.Decode(Hex("12 02 0a03 616263"));
        Assert.Equal((SparkplugFault.Malformed, "Truncated @ 4"), (read.Fault, read.Detail));
    }
}
