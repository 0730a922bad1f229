using System.Formats.Cbor;
using System.Text.Json;
using CsCheck;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using static PlantWatch.Core.Tests.Readings.SenmlC;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>RFC 8428 section 6: CBOR says the same as JSON. One rule a test, and then all of them at once against JSON.</summary>
public class SenmlCborRulesTests
{
    [Theory]
    [InlineData("bver", "20 05")]
    [InlineData("bn", "21 62 78 3a")]
    [InlineData("bt", "22 1a 4e ae a8 8d")]
    [InlineData("bu", "23 63 43 65 6c")]
    [InlineData("bv", "24 02")]
    [InlineData("bs", "25 03")]
    [InlineData("n", "00 61 62")]
    [InlineData("u", "01 61 4b")]
    [InlineData("v", "02 07")]
    [InlineData("vs", "03 61 78")]
    [InlineData("vb", "04 f5")]
    [InlineData("s", "05 09")]
    [InlineData("t", "06 21")]
    [InlineData("ut", "07 18 3c")]
    [InlineData("vd", "08 41 00")]
    public void A_label_in_letters_means_the_same_as_its_integer_of_table_4_and_beside_it_is_one_too_many(string letters, string field)
    {
        var value = field[3..];
        var label = $"{0x60 + letters.Length:x2}{Convert.ToHexString(System.Text.Encoding.UTF8.GetBytes(letters))}";
        var byInteger = Decode($"82 a1 {field} a2 00 61 61 02 01");
        Assert.Equal(byInteger.Select(Told), Decode($"82 a1 {label} {value} a2 00 61 61 02 01").Select(Told));
        var twice = Decode($"82 a2 {field} {label} {value} a2 00 61 61 02 01");
        Assert.Contains((RefusalReason.MalformedSenml, $"#1 {letters}"), twice.Select(i => (i.Refusal, i.Detail)));
        Assert.Equal(letters[0] == 'b' ? 1 : 2, twice.Count);

        static (RefusalReason, string, RawSample) Told(DecodedItem item) => (item.Refusal, item.Detail, item.Sample);
    }

    [Theory]
    [InlineData("09 01")] // integers beyond the table, which is closed
    [InlineData("26 01")]
    [InlineData("1b ff ff ff ff ff ff ff ff 01")]
    [InlineData("3b ff ff ff ff ff ff ff ff 01")]
    [InlineData("61 6c 9f bf 61 78 5f 41 00 ff ff ff")] // letters, with whatever behind them
    [InlineData("60 f6")]
    public void What_is_not_known_is_passed_over(string field) => Assert.Equal(2, Assert.Single(Samples($"81 a3 00 61 61 {field} 02 02")).Value);

    [Theory]
    [InlineData("62 7a 5f 01", "#2 z_", 3)]
    [InlineData("63 62 7a 5f 80", "#2 bz_", 1)] // a base field: what follows would rest on it
    public void What_must_be_understood_and_is_not_is_refused(string field, string detail, int items)
    {
        var refused = Between($"a3 00 61 62 02 02 {field}");
        Assert.Contains((RefusalReason.UnsupportedSenml, detail), refused.Select(i => (i.Refusal, i.Detail)));
        Assert.Equal(items, refused.Count);
    }

    [Fact]
    public void A_map_of_no_stated_length_is_a_record_like_another() =>
        Assert.Equal(new RawSample("a", Instant.Never, 1.5, "Cel"), Assert.Single(Samples("81 bf 00 61 61 01 63 43 65 6c 02 f9 3e 00 ff")));

    [Theory]
    [InlineData("20 f9 49 00")] // 10.0
    [InlineData("20 24")]
    [InlineData("20 c4 82 00 0a")]
    [InlineData("20 62 31 30")]
    public void Only_an_unsigned_integer_is_a_version(string field) =>
        Assert.Equal((RefusalReason.MalformedSenml, "#1 bver"), (Refused($"81 a3 {field} 00 61 61 02 01").Refusal, Refused($"81 a3 {field} 00 61 61 02 01").Detail));

    [Theory]
    [InlineData("21 7f 61 78 61 3a ff", "#2 bn", 1)]
    [InlineData("00 7f 61 78 61 3a ff", "#2 n", 3)]
    [InlineData("00 41 78", "#2 n", 3)]
    [InlineData("01 5f 41 78 ff", "#2 u", 3)]
    public void Names_and_units_are_texts_of_one_piece(string field, string detail, int items)
    {
        var refused = Between($"a2 {field} 02 02");
        Assert.Contains((RefusalReason.MalformedSenml, detail), refused.Select(i => (i.Refusal, i.Detail)));
        Assert.Equal(items, refused.Count);
    }

    [Fact]
    public void A_time_turns_from_relative_to_absolute_at_2_to_28_as_in_JSON()
    {
        Assert.True(Decode("81 a3 00 61 61 02 01 06 1a 0f ff ff ff")[0].TimeIsRelative);
        var absolute = Decode("81 a3 00 61 61 02 01 06 1a 10 00 00 00")[0];
        Assert.False(absolute.TimeIsRelative);
        Assert.Equal("1978-07-04T21:24:16Z", absolute.Sample.DeviceTime.ToString()); // the RFC's own figure, section 4.5.3
    }

    [Fact]
    public void A_receiver_without_a_list_is_a_programming_error() =>
        Assert.Throws<ArgumentNullException>(() => SenmlCbor.Decode([0x80], Senml.Arrival, null!));

    [Fact]
    public void Items_are_appended_to_those_already_there()
    {
        List<DecodedItem> items = [PlainNumber.Decode("7"u8)];
        SenmlCbor.Decode(Bytes("82 a2 00 61 61 02 01"), Senml.Arrival, items);
        Assert.Equal([RefusalReason.None, RefusalReason.MalformedSenml], items.Select(item => item.Refusal));
    }

    /// <summary>Packs of any fields, known or not, once, twice or of the wrong kind: what JSON makes of them, CBOR makes of them, down to the detail.</summary>
    [Fact]
    public void Whatever_a_pack_holds_JSON_and_CBOR_give_the_same_items() =>
        Packs.Sample(
            pack => Assert.Equal(Senml.Decode(Json(pack)).Select(Told), Decode(Cbor(pack)).Select(Told)),
            iter: 60_000, print: pack => System.Text.Encoding.UTF8.GetString(Json(pack)));

    private static (RefusalReason, string, RawSample, bool) Told(DecodedItem item) => (item.Refusal, item.Detail, item.Sample, item.TimeIsRelative);

    private static readonly (string Letters, int Integer)[] Labels =
    [
        ("bver", -1), ("bn", -2), ("bt", -3), ("bu", -4), ("bv", -5), ("bs", -6), ("n", 0), ("u", 1), ("v", 2), ("vs", 3), ("vb", 4), ("s", 5), ("t", 6), ("ut", 7), ("vd", 8),
        ("x", 0), ("x_", 0), ("bx_", 0), ("", 0),
    ];

    private static readonly object?[] Values =
    [
        7.21, 1.5, -4.0, 0.0, -0.0, 1e300, 1.7e308, 0.1, 5.0, 20L, -3L, 268_435_455.5, 268_435_456L, 1_320_078_429L, 1_320_078_429.25, 4e12, -1e300, long.MaxValue, 72.10m, -0.5m,
        "a", "hall:", "", "-x", "p 1", "p\u00fcH", "Cel", "\0", "\"\\/", true, false, null, new object[] { 1L, "y" },
    ];

    private static readonly Gen<(int Label, object? Value, bool ByLetters)> Field = Gen.Select(Gen.Int[0, Labels.Length - 1], Gen.Int[0, Values.Length - 1], Gen.Bool).Select(
        (label, value, letters) => (label, Labels[label].Letters switch { "bver" => value % 3 == 0 ? (object)10L : value % 3 == 1 ? 11L : 5L, "vd" => new byte[] { 1 }, _ => Values[value] }, letters));

    // Most records have a name, a value and a time, or few packs would get beyond the first of them.
    private static readonly Gen<List<(int Label, object? Value, bool ByLetters)>> Record = Gen.Select(Field.Array[0, 3], Gen.Int[0, 9], Gen.Int[0, 6]).Select(
        (fields, value, how) => fields.Concat(how switch { 0 => [], 1 => [(8, Values[value], true)], _ => new[] { (6, (object?)"b", false), (8, Values[value], how % 2 == 0) } }).ToList());

    private static readonly Gen<List<(int Label, object? Value, bool ByLetters)>[]> Packs = Record.Array[0, 5];

    private static byte[] Json(List<(int Label, object? Value, bool ByLetters)>[] pack)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { SkipValidation = true }))
        {
            json.WriteStartArray();
            foreach (var record in pack)
            {
                json.WriteStartObject();
                foreach (var (label, value, _) in record)
                {
                    json.WritePropertyName(Labels[label].Letters);
                    if (value is byte[] octets) json.WriteStringValue(Convert.ToBase64String(octets));
                    else JsonSerializer.Serialize(json, value);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return stream.ToArray();
    }

    private static byte[] Cbor(List<(int Label, object? Value, bool ByLetters)>[] pack) => Write(cbor =>
    {
        cbor.WriteStartArray(pack.Length % 2 == 0 ? pack.Length : null);
        foreach (var record in pack)
        {
            cbor.WriteStartMap(record.Count % 2 == 0 ? record.Count : null);
            foreach (var (label, value, byLetters) in record)
            {
                if (byLetters || label >= 15) cbor.WriteTextString(Labels[label].Letters);
                else cbor.WriteInt32(Labels[label].Integer);
                Value(cbor, value);
            }

            cbor.WriteEndMap();
        }

        cbor.WriteEndArray();
    });

    private static void Value(CborWriter cbor, object? value)
    {
        switch (value)
        {
            case null: cbor.WriteNull(); break;
            case bool b: cbor.WriteBoolean(b); break;
            case string text: cbor.WriteTextString(text); break;
            case byte[] octets: cbor.WriteByteString(octets); break;
            case long whole: cbor.WriteInt64(whole); break;
            case decimal fraction: cbor.WriteDecimal(fraction); break;
            case double number when (double)(Half)number == number: cbor.WriteHalf((Half)number); break;
            case double number when (double)(float)number == number: cbor.WriteSingle((float)number); break;
            case double number: cbor.WriteDouble(number); break;
            case object[] list:
                cbor.WriteStartArray(list.Length);
                foreach (var one in list) Value(cbor, one);
                cbor.WriteEndArray();
                break;
        }
    }
}
