using System.Text;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Each decoder has a closed list of what it refuses for, and each of its reasons a payload here: one without fails.</summary>
public class DecoderRefusalsTests
{
    private const string Json = "SenML JSON", Cbor = "SenML CBOR", Number = "plain number", Pump = "pump state";

    private static readonly Dictionary<string, (IReadOnlyList<RefusalReason> List, Func<byte[], List<DecodedItem>> Decode)> Decoders = new()
    {
        [Number] = (DecoderRefusals.PlainNumber, p => [PlainNumber.Decode(p)]),
        [Pump] = (DecoderRefusals.PumpState, p => [PumpStateWords.Decode(p)]),
        [Json] = (DecoderRefusals.SenmlJson, Senml.Decode),
        [Cbor] = (DecoderRefusals.SenmlCbor, SenmlC.Decode),
    };

    private static readonly (string Decoder, RefusalReason Reason, byte[] Payload)[] Cases =
    [
        (Number, RefusalReason.Empty, Text("")), (Number, RefusalReason.TooLarge, Text(new string('7', PayloadText.Largest + 1))), (Number, RefusalReason.InvalidUtf8, Hex("372eff")),
        (Number, RefusalReason.NotANumber, Text("7,2")), (Number, RefusalReason.NotFinite, Text("1e999")),
        (Pump, RefusalReason.Empty, Text(" ")), (Pump, RefusalReason.TooLarge, Text(new string('1', PayloadText.Largest + 1))), (Pump, RefusalReason.InvalidUtf8, Hex("ff")),
        (Pump, RefusalReason.UnknownState, Text("priming")),
        (Json, RefusalReason.Empty, Text(" ")), (Json, RefusalReason.TooLarge, Text($"[{new string(' ', PayloadText.Largest)}]")), (Json, RefusalReason.InvalidUtf8, [.. Text("[{\"n\":\""), 0xff, .. Text("\",\"v\":1}]")]),
        (Json, RefusalReason.NotFinite, Text("""[{"n":"a","v":1e999}]""")), (Json, RefusalReason.ClockAhead, Text("""[{"n":"a","v":1,"t":1e12}]""")), (Json, RefusalReason.ClockBehind, Text("""[{"n":"a","v":1,"t":-1e12}]""")),
        (Json, RefusalReason.MalformedSenml, Text("7.2")), (Json, RefusalReason.UnsupportedSenml, Text("""[{"bver":11,"n":"a","v":1}]""")), (Json, RefusalReason.SenmlWithoutNumber, Text("""[{"n":"a","vs":"x"}]""")),
        (Json, RefusalReason.InvalidName, Text("""[{"n":"p 1","v":1}]""")), (Json, RefusalReason.WrongUnit, Text("""[{"n":"a","u":"abcdefghijklmnopqrstuvwxyz0123456789","v":1}]""")),
        (Cbor, RefusalReason.Empty, []), (Cbor, RefusalReason.TooLarge, new byte[PayloadText.Largest + 1]), (Cbor, RefusalReason.InvalidUtf8, Hex("81a20062c3280201")),
        (Cbor, RefusalReason.NotFinite, Hex("81a20061610 2f97e00")), (Cbor, RefusalReason.ClockAhead, Hex("81a3006161020106fb426d1a94a2000000")), (Cbor, RefusalReason.ClockBehind, Hex("81a3006161020106fbc26d1a94a2000000")),
        (Cbor, RefusalReason.MalformedSenml, Hex("07")), (Cbor, RefusalReason.UnsupportedSenml, Hex("81a3200b0061610201")), (Cbor, RefusalReason.SenmlWithoutNumber, Hex("81a2006161036178")),
        (Cbor, RefusalReason.InvalidName, Hex("81a200637020310201")), (Cbor, RefusalReason.WrongUnit, Hex("81a3006161020101 7824" + "6162636465666768696a6b6c6d6e6f707172737475767778797a30313233343536373839")),
    ];

    public static TheoryData<string, RefusalReason> All
    {
        get
        {
            var rows = new TheoryData<string, RefusalReason>();
            foreach (var (decoder, reason, _) in Cases) rows.Add(decoder, reason);
            return rows;
        }
    }

    [Theory, MemberData(nameof(All))]
    public void A_reason_of_the_list_is_what_its_payload_is_refused_for(string decoder, RefusalReason reason)
    {
        var payload = Cases.Single(c => c.Decoder == decoder && c.Reason == reason).Payload;
        Assert.Equal(reason, Assert.Single(Decoders[decoder].Decode(payload)).Refusal);
    }

    [Theory]
    [InlineData(Number)]
    [InlineData(Pump)]
    [InlineData(Json)]
    [InlineData(Cbor)]
    public void Every_reason_of_a_decoder_has_its_payload_and_its_row_in_the_document(string decoder)
    {
        var list = Decoders[decoder].List.Order();
        Assert.Equal(list, Cases.Where(c => c.Decoder == decoder).Select(c => c.Reason).Order());
        Assert.Equal(list, Documented(decoder).Order());
    }

    // docs/reason-codes.md: a row a reason, a column a decoder.
    private static IEnumerable<RefusalReason> Documented(string decoder)
    {
        var lines = File.ReadAllLines(Source.PathOf("docs", "reason-codes.md"));
        var head = Array.FindIndex(lines, l => l.StartsWith("| refusal |", StringComparison.Ordinal));
        Assert.True(head >= 0, "no table of refusals");
        var column = Array.FindIndex(Cells(lines[head]), c => c == decoder);
        Assert.True(column > 0, $"no column {decoder}");
        return lines.Skip(head + 2).TakeWhile(l => l.StartsWith('|')).Select(Cells).Where(c => c[column].Length > 0)
            .Select(c => Enum.GetValues<RefusalReason>().Single(r => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(r.ToString()) == c[1]));
    }

    private static string[] Cells(string row) => [.. row.Split('|').Select(c => c.Trim())];

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Hex(string hex) => SenmlC.Bytes(hex);
}
