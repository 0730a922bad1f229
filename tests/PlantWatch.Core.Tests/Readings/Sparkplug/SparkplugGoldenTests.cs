using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>
/// Bytes that another encoder made: sparkplug-payload 1.0.3 of the Eclipse Tahu project (EPL-2.0, on protobufjs 6.11.6), once, on Node.js by
/// <c>require('sparkplug-payload').get('spBv1.0').encodePayload({ timestamp, seq, metrics: [{ name, alias, type, value, timestamp, ... }] })</c> with the values
/// that stand beside them here; the compressed ones with the same payload in <c>body</c> by zlib.deflateSync and zlib.gzipSync. Nothing of it is carried along but these bytes.
/// </summary>
public class SparkplugGoldenTests
{
    private static readonly Instant Sent = Instant.FromUtc(2026, 1, 1);

    private static readonly byte[] Birth = Hex(
        "0880d0eab6b73312120a0562645365711880d0eab6b7332004580712210a144e6f646520436f6e74726f6c2f526562697274681880d0eab6b733200b700012180a027048100118f8a8eab6b733200a69d7a3703d0ad71c40"
        + "121d0a0b54656d7065726174757265100218e0b0eab6b7332009650000e44112180a055265646f78100318c8b8eab6b73320025083ffffff0f121a0a074f666673657438100418c8b8eab6b733200150ffffffff0f121b0a"
        + "084f66667365743332100518c8b8eab6b73320035080f785ff0f121a0a07436f756e746572100618c8b8eab6b73320075880d0acf30e12190a05546f74616c100718c8b8eab6b733200858cb89ec8ff723121f0a0742616c"
        + "616e6365100818c8b8eab6b733200458d6ffffffffffffffff0112130a04466c6f77100918c8b8eab6b733200b7001123c0a07446f7562746564100a18c8b8eab6b733200a4a1d0a044e6f74650a075175616c6974791205"
        + "080c4201781205080318f40369000000000000f83f121d0a054c6162656c100b18c8b8eab6b733200c7a09706f6f6c2068616c6c12160a074e6f7468696e67100c18c8b8eab6b733200a3801121b0a034f6c64100d1880f3"
        + "8eb5b733200a2801696666666666661c4012360a055461626c65100e18c8b8eab6b73320108a01210801120161180a220b0a0921000000000000f83f220b0a092100000000000004401800");

    // NDATA of alias 1, 7.22, 900 ms later; sent 1 s later, seq 1. The encoder writes the type beside it, which it should not.
    private const string Data = "08e8d7eab6b733121410011884d7eab6b733200a69e17a14ae47e11c401801";

    private static SparkHost Heard(params byte[][] payloads)
    {
        var host = new SparkHost();
        foreach (var payload in payloads) host.Hears(SparkEdge.Of(payload == Birth ? SparkplugKind.NodeBirth : SparkplugKind.NodeData, "", payload));
        return host;
    }

    [Fact]
    public void The_birth_of_another_encoder_gives_the_values_that_went_into_it()
    {
        var host = Heard(Birth);
        var at = Sent - TimeSpan.FromSeconds(3);
        (string, double, Instant, Quality)[] expected =
        [
            ("pH", 7.21, Sent - TimeSpan.FromSeconds(5), Quality.Received), ("Temperature", 28.5, Sent - TimeSpan.FromSeconds(4), Quality.Received), ("Redox", -125, at, Quality.Received),
            ("Offset8", -1, at, Quality.Received), ("Offset32", -2_000_000, at, Quality.Received), ("Counter", 4_000_000_000, at, Quality.Received), ("Total", 1_234_567_890_123, at, Quality.Received),
            ("Balance", -42, at, Quality.Received), ("Flow", 1, at, Quality.Received), ("Doubted", 1.5, at, Quality.Received | Quality.Suspect),
            ("Old", 7.1, Sent - TimeSpan.FromHours(1), Quality.Received | Quality.Late),
        ];
        Assert.Equal(expected, host.Readings.Select(r => (r.Metric, r.Value, r.MeasuredAt, r.Quality)));
        Assert.Equal([(SparkNoteKind.NodeOnline, "", "7"), (SparkNoteKind.WithoutNumber, "Label", "NotANumber"), (SparkNoteKind.Null, "Nothing", ""), (SparkNoteKind.WithoutNumber, "Table", "NotANumber")], host.Notes.Select(n => (n.Kind, n.Metric, n.Detail)));
        Assert.Equal((7UL, (byte)1), (host.State.BirthNumber!.Value, host.State.Next));
    }

    [Theory]
    [InlineData(Data)]
    [InlineData("12160a09616c676f726974686d200c7a074445464c415445221253504256312e305f434f4d505245535345442a24789ce37871fdd5b6edc64222028c122d60a60257e6c32a9175ee0f651c241801e1a60cd3")] // DEFLATE
    [InlineData("12130a09616c676f726974686d200c7a04475a4950221253504256312e305f434f4d505245535345442a301f8b0800000000000003e37871fdd5b6edc64222028c122d60a60257e6c32a9175ee0f651c2418014a7cb90b1f000000")] // GZIP
    public void Its_data_is_read_plain_and_compressed(string hex)
    {
        var host = Heard(Birth).Then().Hears(SparkEdge.Of(SparkplugKind.NodeData, "", Hex(hex)));
        Assert.Equal(("pH", 7.22, Sent + TimeSpan.FromMilliseconds(900), Quality.Received), host.Readings.Select(r => (r.Metric, r.Value, r.MeasuredAt, r.Quality)).Single());
        Assert.Empty(host.Notes);
    }

    [Fact]
    public void The_writer_of_these_tests_writes_what_that_encoder_wrote()
    {
        byte[] mine = Payload(Sent + TimeSpan.FromSeconds(1), 1, Nameless(Alias(1), At(Sent + TimeSpan.FromMilliseconds(900)), Typed(SparkplugType.Double), F64(7.22)));
        Assert.Equal(Data, Convert.ToHexStringLower(mine));
    }
}
