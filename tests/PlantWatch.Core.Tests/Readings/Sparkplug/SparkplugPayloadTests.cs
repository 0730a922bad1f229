using System.IO.Compression;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Payloads of Sparkplug B: fields, bounds, and what is refused.</summary>
public class SparkplugPayloadTests
{
    [Fact]
    public void A_payload_says_when_it_was_sent_its_number_and_its_metrics_in_their_order()
    {
        var read = Read(Payload(Start, 255, Named("pH", Alias(3), At(Start), Typed(SparkplugType.Double), F64(7.2)), Nameless(Alias(ulong.MaxValue), Historical, Transient, Null), Nameless()));
        Assert.Equal((Start, (byte)255, false), (read.SentAt, read.Sequence!.Value, read.WasCompressed));
        Assert.Equal(
            [
                new() { Name = "pH", Alias = 3, CapturedAt = Start, Type = SparkplugType.Double, Field = SparkplugField.Double, Bits = BitConverter.DoubleToUInt64Bits(7.2) },
                new() { Alias = ulong.MaxValue, IsHistorical = true, IsTransient = true, IsNull = true },
                default,
            ],
            read.Metrics.ToArray());
    }

    [Fact]
    public void What_is_left_out_is_left_out()
    {
        var read = Read(Payload(null, null, Nameless()));
        Assert.Equal((Instant.Never, null), (read.SentAt, read.Sequence));
    }

    [Fact]
    public void Fields_that_are_not_known_are_passed_over_and_of_one_twice_the_last_holds()
    {
        byte[] unknown = [.. Number(100, 1), .. Fixed64(101, 1), .. Fixed32(102, 1), .. Text(103, "x"), .. Hex("c3070801c407")];
        var read = Read([.. unknown, .. Number(3, 4), .. Named("a", unknown, Text(1, "b"), I32(1), Bytes(8, [1, 2, 3]), F64(2), unknown), .. unknown, .. Number(3, 5)]);
        var metric = Assert.Single(read.Metrics);
        Assert.Equal((5, "b", SparkplugField.Double, 2.0), (read.Sequence!.Value, metric.Name, metric.Field, BitConverter.UInt64BitsToDouble(metric.Bits)));
    }

    [Theory]
    [InlineData(192, 3, SparkplugQuality.Good)]
    [InlineData(0, 3, SparkplugQuality.Bad)]
    [InlineData(500, 3, SparkplugQuality.Stale)]
    [InlineData(193, 3, SparkplugQuality.Unreadable)]
    [InlineData(192, 4, SparkplugQuality.Unreadable)]
    public void The_property_Quality_is_an_Int32_of_three_codes(ulong code, ulong type, SparkplugQuality quality) => Assert.Equal(quality, Metric(QualityCode(code, type)).Quality);

    [Fact]
    public void Quality_is_found_among_other_properties_however_the_two_lists_are_mixed()
    {
        byte[] other = Bytes(2, [.. Number(1, 12), .. Text(8, "x")], 0), bad = Bytes(2, [.. Number(1, 3), .. Number(3, 0)], 0);
        Assert.Equal(SparkplugQuality.Bad, Metric(Bytes(9, [.. Text(1, "Note"), .. Text(1, "Quality"), .. other, .. bad])).Quality);
        Assert.Equal(SparkplugQuality.Bad, Metric(Bytes(9, [.. other, .. bad, .. Text(1, "Note"), .. Text(1, "Quality")])).Quality);
        Assert.Equal(SparkplugQuality.Good, Metric(Bytes(9, [.. Text(1, "Note"), .. other])).Quality);
        Assert.Equal(SparkplugQuality.Good, Metric(Bytes(9, [])).Quality);

        static byte[] Bytes(int field, byte[] content, int _ = 0) => Spark.Bytes(field, content);
    }

    // tck-id-payloads-propertyset-keys-array-size
    [Fact]
    public void Properties_that_do_not_pair_up_leave_the_quality_unreadable()
    {
        Assert.Equal(SparkplugQuality.Unreadable, Metric(Bytes(9, [.. Text(1, "Quality")])).Quality);
        Assert.Equal(SparkplugQuality.Unreadable, Metric(Bytes(9, [.. Text(1, "Note"), .. Text(1, "Quality"), .. Bytes(2, Number(3, 192))])).Quality);
        Assert.Equal(SparkplugQuality.Unreadable, Metric(Bytes(9, [.. Text(1, "Quality"), .. Bytes(2, [])])).Quality);
        Assert.Equal(SparkplugQuality.Unreadable, Metric(Bytes(9, [.. Text(1, "Quality"), .. Bytes(2, [0xff])])).Quality);
    }

    [Fact]
    public void A_time_that_no_calendar_writes_spoils_its_metric_alone()
    {
        var read = Read(Payload(Start, 1, Named("a", Number(3, 253_402_300_800_000)), Named("b", Number(3, 253_402_300_799_999)), Named("c", Number(3, 0))));
        Assert.Equal([true, false, false], read.Metrics.Select(m => m.HasWrongTime));
        Assert.Equal([Instant.Never, Instant.FromUnixMilliseconds(253_402_300_799_999), Instant.Never], read.Metrics.Select(m => m.CapturedAt));
    }

    [Theory]
    [InlineData("DEFLATE")]
    [InlineData("GZIP")]
    [InlineData(null)]
    public void A_compressed_payload_is_the_payload_within(string? algorithm)
    {
        var read = Read(Compressed(Packed(Payload(Start, 9, Named("pH", F64(7.2))), algorithm), algorithm));
        Assert.True(read.WasCompressed);
        Assert.Equal((Start, 9, "pH"), (read.SentAt, read.Sequence!.Value, Assert.Single(read.Metrics).Name));
    }

    private static readonly (SparkplugFault Fault, byte[] Payload)[] Wrong =
    [
        (SparkplugFault.Empty, []), (SparkplugFault.Empty, Compressed(Packed([], "GZIP"), "GZIP")), (SparkplugFault.TooLarge, new byte[SparkplugPayload.Largest + 1]),
        (SparkplugFault.Malformed, Text(16, "x")[..2]), (SparkplugFault.Malformed, [0]), (SparkplugFault.Malformed, Compressed(Packed([0], "GZIP"), "GZIP")), (SparkplugFault.Malformed, Nameless(Bytes(9, [0]))),
        (SparkplugFault.WrongWire, Text(1, "2026")), (SparkplugFault.WrongWire, Number(2, 1)), (SparkplugFault.WrongWire, Fixed64(3, 1)), (SparkplugFault.WrongWire, Number(4, 1)), (SparkplugFault.WrongWire, Number(5, 1)),
        (SparkplugFault.WrongWire, Nameless(Number(1, 1))), (SparkplugFault.WrongWire, Nameless(Text(2, "1"))), (SparkplugFault.WrongWire, Nameless(Fixed64(3, 1))), (SparkplugFault.WrongWire, Nameless(Number(9, 1))),
        (SparkplugFault.WrongWire, Nameless(Fixed32(10, 1))), (SparkplugFault.WrongWire, Nameless(Number(12, 1))), (SparkplugFault.WrongWire, Nameless(Fixed32(13, 1))), (SparkplugFault.WrongWire, Nameless(Number(15, 1))),
        (SparkplugFault.InvalidUtf8, Nameless(Bytes(1, [0x61, 0xff]))), (SparkplugFault.NameTooLong, Named(new string('n', SparkplugPayload.LongestName + 1))),
        (SparkplugFault.TooManyMetrics, Payload(null, null, [.. Enumerable.Repeat(Nameless(), SparkplugPayload.MostMetrics + 1)])),
        (SparkplugFault.WrongSequence, Number(3, 256)), (SparkplugFault.WrongSequence, Number(3, ulong.MaxValue)), (SparkplugFault.WrongTime, Number(1, ulong.MaxValue)), (SparkplugFault.WrongTime, Number(1, 253_402_300_800_000)),
        (SparkplugFault.UnknownAlgorithm, Compressed([1], "BROTLI")), (SparkplugFault.UnknownAlgorithm, Compressed([1], new string('G', 100))), (SparkplugFault.UnknownAlgorithm, [.. Text(4, "SPBV1.0_COMPRESSED"), .. Bytes(5, [1]), .. Named("algorithm", I32(1))]),
        (SparkplugFault.BrokenCompression, Compressed([1, 2, 3], "GZIP")), (SparkplugFault.BrokenCompression, Compressed([1, 2, 3], "DEFLATE")), (SparkplugFault.BrokenCompression, Compressed(Packed(new byte[99], "GZIP"), "DEFLATE")),
        (SparkplugFault.BrokenCompression, Compressed(Hex("78bb 00000001 00"), "DEFLATE")), // a dictionary that nobody has (RFC 1950, FDICT)
        (SparkplugFault.BrokenCompression, Compressed([.. Packed(Number(3, 1), "DEFLATE")[..^1], 0], "DEFLATE")),
        (SparkplugFault.InflatesTooFar, Compressed(Packed(new byte[SparkplugPayload.Largest + 1], "GZIP"), "GZIP")), (SparkplugFault.InflatesTooFar, Compressed(Packed(new byte[5000], "DEFLATE"), "DEFLATE")),
        (SparkplugFault.CompressedTwice, Compressed(Packed(Compressed(Packed(Number(3, 1), "GZIP"), "GZIP"), "GZIP"), "GZIP")),
    ];

    [Fact]
    public void What_cannot_be_read_is_refused_by_name_and_gives_nothing()
    {
        for (var i = 0; i < Wrong.Length; i++)
        {
            var read = SparkplugPayload.Decode(Wrong[i].Payload);
            Assert.Equal((i, Wrong[i].Fault), (i, read.Fault));
            Assert.Empty(read.Metrics);
            Assert.True(read.Detail.Length <= 60 && !read.Detail.Any(char.IsControl), read.Detail);
        }
    }

    [Fact]
    public void Every_fault_of_a_payload_has_its_test() => Assert.Equal(Enum.GetValues<SparkplugFault>().Except([SparkplugFault.None]), Wrong.Select(w => w.Fault).Distinct().Order());

    [Fact]
    public void The_largest_are_read()
    {
        Assert.Equal(SparkplugPayload.MostMetrics, Read(Payload(null, null, [.. Enumerable.Repeat(Nameless(), SparkplugPayload.MostMetrics)])).Metrics.Length);
        Assert.Equal(SparkplugPayload.LongestName, Assert.Single(Read(Named(new string('n', SparkplugPayload.LongestName))).Metrics).Name!.Length);
        byte[] filled = Bytes(100, new byte[SparkplugPayload.Largest - 5]);
        Assert.Equal(SparkplugPayload.Largest, filled.Length);
        Read(filled);
    }

    // A gigabyte of nothing in a megabyte: only as much is inflated as is allowed.
    [Fact]
    public void A_bomb_costs_no_more_than_its_bound()
    {
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            for (var i = 0; i < 256; i++) zip.Write(new byte[1 << 20]);
        var bomb = Compressed(packed.ToArray(), "GZIP");
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(SparkplugFault.InflatesTooFar, SparkplugPayload.Decode(bomb).Fault);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 8 << 20);
    }

    internal static byte[] Packed(byte[] plain, string? algorithm)
    {
        using var packed = new MemoryStream();
        using (Stream stream = algorithm == "GZIP" ? new GZipStream(packed, CompressionLevel.Optimal) : new ZLibStream(packed, CompressionLevel.Optimal)) stream.Write(plain);
        return packed.ToArray();
    }
}
