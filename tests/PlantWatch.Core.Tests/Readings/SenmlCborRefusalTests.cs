using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using static PlantWatch.Core.Tests.Readings.SenmlC;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Bytes that are no SenML in CBOR: what the reader says of them, and what becomes of the pack.</summary>
public class SenmlCborRefusalTests
{
    // What is wrong stands behind the label "x" of a record: nobody looks at it, and still nothing behind it can be trusted.
    private static readonly (CborFault Fault, string Hex, int At)[] Faults =
    [
        (CborFault.Truncated, "", 0), (CborFault.Truncated, "18", 1), (CborFault.Truncated, "19ff", 2), (CborFault.Truncated, "1affffff", 4), (CborFault.Truncated, "1bffffffffffffff", 8),
        (CborFault.Truncated, "62 61", 2), (CborFault.Truncated, "5bffffffffffffffff00", 10), (CborFault.Truncated, "7b7fffffffffffffff00", 10), (CborFault.Truncated, "9bffffffffffffffff", 9),
        (CborFault.Truncated, "bb800000000000000000", 10), (CborFault.Truncated, "9f01", 2), (CborFault.Truncated, "5f4101", 3), (CborFault.Truncated, "c1", 1),
        (CborFault.ReservedHead, "1c", 0), (CborFault.ReservedHead, "3d", 0), (CborFault.ReservedHead, "5e", 0), (CborFault.ReservedHead, "fc", 0), (CborFault.ReservedHead, "811f", 1),
        (CborFault.ReservedHead, "3f", 0), (CborFault.ReservedHead, "df00", 0), (CborFault.ReservedHead, "f817", 0), (CborFault.ReservedHead, "f81f", 0),
        (CborFault.StrayBreak, "ff", 0), (CborFault.StrayBreak, "81ff", 1), (CborFault.StrayBreak, "a1ff00", 1), (CborFault.StrayBreak, "bf00ff", 2), (CborFault.StrayBreak, "c1ff", 1),
        (CborFault.WrongChunk, "5f6161ff", 1), (CborFault.WrongChunk, "7f4161ff", 1), (CborFault.WrongChunk, "7f00ff", 1), (CborFault.WrongChunk, "5f5f4100ffff", 1), (CborFault.WrongChunk, "7fc16161ff", 1),
        (CborFault.TooDeep, "8181818181818181818181818181818180", 15), (CborFault.TooDeep, "c1c1c1c1c1c1c1c1c1c1c1c1c1c1c1c100", 15), (CborFault.TooDeep, "a100a100a100a100a100a100a100a100a100a100a100a100a100a100a100a10000", 30),
        (CborFault.InvalidUtf8, "62c328", 1), (CborFault.InvalidUtf8, "7f61c361bcff", 2), (CborFault.InvalidUtf8, "63eda080", 1), (CborFault.InvalidUtf8, "a162c32800", 2),
    ];

    public static TheoryData<CborFault, string, int> Wrong
    {
        get
        {
            var rows = new TheoryData<CborFault, string, int>();
            foreach (var (fault, hex, at) in Faults) rows.Add(fault, hex, at);
            return rows;
        }
    }

    [Theory, MemberData(nameof(Wrong))]
    public void The_first_fault_is_named_with_its_place_and_refuses_the_pack(CborFault fault, string hex, int at)
    {
        var cbor = new CborReader(Bytes(hex));
        Assert.False(cbor.TryHead(out var head) && cbor.TrySkip(head));
        Assert.Equal((fault, at), (cbor.Fault, cbor.FaultAt));
        Assert.False(cbor.TryHead(out _));

        var pack = Bytes($"82 a2 00 61 61 02 01 a3 00 61 62 02 02 61 78 {hex}");
        var refused = Assert.Single(Decode(pack));
        var place = 16 - 1 + at;
        Assert.Equal(fault == CborFault.InvalidUtf8 ? RefusalReason.InvalidUtf8 : RefusalReason.MalformedSenml, refused.Refusal);
        Assert.Equal(place < pack.Length ? $"0x{pack[place]:x2} @ {place}" : $"@ {place}", refused.Detail);
        Assert.Equal(Range.All, refused.Bytes);
    }

    [Fact]
    public void Every_fault_of_the_reader_has_its_test() =>
        Assert.Equal(Enum.GetValues<CborFault>().Except([CborFault.None]), Faults.Select(f => f.Fault).Distinct().Order());

    [Fact]
    public void Nesting_is_passed_over_to_sixteen_and_no_further()
    {
        Assert.Equal(1, Assert.Single(Decode($"81a3006161 6178 {string.Concat(Enumerable.Repeat("81", CborReader.Deepest - 1))}80 0201")).Sample.Value);
        Assert.Equal(RefusalReason.MalformedSenml, Refused($"81a3006161 6178 {string.Concat(Enumerable.Repeat("81", CborReader.Deepest))}80 0201").Refusal);
        Assert.Equal(RefusalReason.MalformedSenml, Refused(string.Concat(Enumerable.Repeat("81", 30_000))).Refusal);
    }

    [Theory]
    [InlineData("07", "@ 0")] // no array
    [InlineData("a0", "@ 0")]
    [InlineData("d9d9f780", "@ 0")]
    [InlineData("80", "[]")]
    [InlineData("9fff", "[]")]
    [InlineData("8101", "#1")] // no record
    [InlineData("82 a2 00 61 61 02 01 80", "#2")]
    [InlineData("81 c1 a2 00 61 61 02 01", "#1")]
    [InlineData("81 a2 00 61 61 02 01 00", "@ 7")] // something behind it
    [InlineData("9f a2 00 61 61 02 01 ff ff", "@ 8")]
    [InlineData("81 a3 00 61 61 02 01 41 62 00", "#1 @ 7")] // labels that are none: octets, a float, a text in pieces
    [InlineData("81 a3 00 61 61 02 01 f9 3c 00 00", "#1 @ 7")]
    [InlineData("81 a3 00 61 61 02 01 7f 61 62 61 6e ff 61 78", "#1 @ 7")]
    public void What_is_no_array_of_records_is_malformed_as_a_whole(string hex, string detail) =>
        Assert.Equal((RefusalReason.MalformedSenml, detail, Range.All), (Refused(hex).Refusal, Refused(hex).Detail, Refused(hex).Bytes));

    [Theory]
    [InlineData("21 07", "#2 bn")]
    [InlineData("22 63 6e 6f 77", "#2 bt")]
    [InlineData("23 f6", "#2 bu")]
    [InlineData("24 f5", "#2 bv")]
    [InlineData("25 61 31", "#2 bs")]
    [InlineData("22 c1 00", "#2 bt")]
    [InlineData("20 00", "#2 bver 0")]
    [InlineData("20 05", "#2 bver 5")] // the first record said 10 by saying nothing
    public void A_base_field_that_cannot_be_read_spoils_the_pack_since_the_rest_would_rest_on_it(string field, string detail)
    {
        var item = Assert.Single(Between($"a1 {field}"));
        Assert.Equal((RefusalReason.MalformedSenml, detail), (item.Refusal, item.Detail));
    }

    [Theory]
    [InlineData("a2 00 61 62 02 61 32", RefusalReason.SenmlWithoutNumber, "#2 v")]
    [InlineData("a2 00 61 62 02 f6", RefusalReason.SenmlWithoutNumber, "#2 v")]
    [InlineData("a2 00 61 62 04 01", RefusalReason.SenmlWithoutNumber, "#2 vb")]
    [InlineData("a2 00 61 62 03 61 78", RefusalReason.SenmlWithoutNumber, "#2 vs")]
    [InlineData("a2 00 61 62 08 41 00", RefusalReason.SenmlWithoutNumber, "#2 vd")]
    [InlineData("a1 00 61 62", RefusalReason.SenmlWithoutNumber, "#2")]
    [InlineData("a0", RefusalReason.SenmlWithoutNumber, "#2")]
    [InlineData("a3 00 61 62 02 02 06 63 6e 6f 77", RefusalReason.MalformedSenml, "#2 t")]
    [InlineData("a3 00 61 62 02 02 02 03", RefusalReason.MalformedSenml, "#2 v")]
    [InlineData("a2 00 61 62 02 f9 7e 00", RefusalReason.NotFinite, "#2 v")]
    [InlineData("a3 00 61 62 02 02 06 f9 7c 00", RefusalReason.NotFinite, "#2 t")]
    [InlineData("a3 00 61 62 02 02 06 fb fe 37 e4 3c 88 00 75 9c", RefusalReason.ClockBehind, "#2 t -1E+300")]
    [InlineData("a3 00 61 62 02 02 06 1b 00 00 00 e8 d4 a5 10 00", RefusalReason.ClockAhead, "#2 t 1000000000000")]
    [InlineData("a1 02 02", RefusalReason.InvalidName, "#2")]
    [InlineData("a2 00 62 2d 62 02 02", RefusalReason.InvalidName, "#2 -b")]
    public void A_record_that_is_wrong_in_itself_does_not_spoil_its_neighbours(string record, RefusalReason reason, string detail)
    {
        var items = Between(record);
        Assert.Equal([RefusalReason.None, reason, RefusalReason.None], items.Select(item => item.Refusal));
        Assert.Equal(detail, items[1].Detail);
        Assert.Equal([1, 3], [items[0].Sample.Value, items[2].Sample.Value]);
    }

    [Fact]
    public void A_pack_over_64_KiB_is_too_large_and_one_of_64_KiB_is_read()
    {
        // A label beyond the table, whose octets fill the pack.
        const int filler = PayloadText.Largest - 11;
        byte[] pack = [0x81, 0xa3, 0x00, 0x61, 0x61, 0x02, 0x01, 0x09, 0x59, filler >> 8, filler & 0xff, .. new byte[filler]];
        Assert.Equal(PayloadText.Largest, pack.Length);
        Assert.Equal(1, Assert.Single(Samples(pack)).Value);
        Assert.Equal(RefusalReason.TooLarge, Assert.Single(Decode([.. pack, 0])).Refusal);
    }

    [Fact]
    public void A_pack_holds_no_more_records_than_JSON_could_have()
    {
        byte[] most = [0x9f, .. Enumerable.Repeat((byte)0xa0, SenmlPackLimit), 0xff];
        Assert.Equal(SenmlPackLimit, Decode(most).Count);
        var over = Assert.Single(Decode([0x9f, 0xa0, .. most.AsSpan(1)]));
        Assert.Equal((RefusalReason.TooLarge, $"> #{SenmlPackLimit}"), (over.Refusal, over.Detail));
    }

    private const int SenmlPackLimit = PayloadText.Largest / 3;
}
