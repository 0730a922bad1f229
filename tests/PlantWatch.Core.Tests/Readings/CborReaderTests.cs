using CsCheck;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using static PlantWatch.Core.Tests.Readings.SenmlC;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The reader against the examples of RFC 8949 appendix A, and against the platform's encoder.</summary>
public class CborReaderTests
{
    // RFC 8949 appendix A: the items that are numbers.
    [Theory]
    [InlineData("00", 0)]
    [InlineData("01", 1)]
    [InlineData("0a", 10)]
    [InlineData("17", 23)]
    [InlineData("1818", 24)]
    [InlineData("1819", 25)]
    [InlineData("1864", 100)]
    [InlineData("1903e8", 1000)]
    [InlineData("1a000f4240", 1000000)]
    [InlineData("1b000000e8d4a51000", 1000000000000)]
    [InlineData("1bffffffffffffffff", 18446744073709551615.0)]
    [InlineData("3bffffffffffffffff", -18446744073709551616.0)]
    [InlineData("20", -1)]
    [InlineData("29", -10)]
    [InlineData("3863", -100)]
    [InlineData("3903e7", -1000)]
    [InlineData("f90000", 0.0)]
    [InlineData("f93c00", 1.0)]
    [InlineData("fb3ff199999999999a", 1.1)]
    [InlineData("f93e00", 1.5)]
    [InlineData("f97bff", 65504.0)]
    [InlineData("fa47c35000", 100000.0)]
    [InlineData("fa7f7fffff", 3.4028234663852886e+38)]
    [InlineData("fb7e37e43c8800759c", 1.0e+300)]
    [InlineData("f90001", 5.960464477539063e-08)]
    [InlineData("f90400", 0.00006103515625)]
    [InlineData("f9c400", -4.0)]
    [InlineData("fbc010666666666666", -4.1)]
    public void A_number_of_appendix_A_is_the_double_it_says(string hex, double number)
    {
        var cbor = new CborReader(Bytes(hex));
        Assert.True(cbor.TryHead(out var head) && cbor.TrySkip(head) && cbor.IsAtEnd);
        Assert.True(head.TryNumber(out var read));
        Assert.Equal(number, read);
        Assert.Equal(number, Value(hex).Sample.Value);
    }

    [Theory]
    [InlineData("f97c00")]
    [InlineData("f97e00")]
    [InlineData("f9fc00")]
    [InlineData("fa7f800000")]
    [InlineData("fa7fc00000")]
    [InlineData("faff800000")]
    [InlineData("fb7ff0000000000000")]
    [InlineData("fb7ff8000000000000")]
    [InlineData("fbfff0000000000000")]
    public void A_float_of_appendix_A_that_is_not_finite_is_refused_as_such(string hex) =>
        Assert.Equal((RefusalReason.NotFinite, "#1 v"), (Value(hex).Refusal, Value(hex).Detail));

    [Fact]
    public void Minus_nought_is_nought() => Assert.Equal(0L, BitConverter.DoubleToInt64Bits(Value("f98000").Sample.Value));

    // RFC 8949 appendix A: all others, which no reading can be. (Simple value 24, which RFC 7049 had there, is no longer well-formed: section 3.3.)
    public static TheoryData<string> Others { get; } =
    [
        "c249010000000000000000", "c349010000000000000000", "f4", "f5", "f6", "f7",
        "f0", "f8ff", "c074323031332d30332d32315432303a30343a30305a", "c11a514b67b0", "c1fb41d452d9ec200000",
        "d74401020304", "d818456449455446", "d82076687474703a2f2f7777772e6578616d706c652e636f6d", "40", "4401020304", "60",
        "6161", "6449455446", "62225c", "62c3bc", "63e6b0b4", "64f0908591",
        "80", "83010203", "8301820203820405", "98190102030405060708090a0b0c0d0e0f101112131415161718181819", "a0", "a201020304",
        "a26161016162820203", "826161a161626163", "a56161614161626142616361436164614461656145", "5f42010243030405ff", "7f657374726561646d696e67ff", "9fff",
        "9f018202039f0405ffff", "9f01820203820405ff", "83018202039f0405ff", "83019f0203ff820405", "9f0102030405060708090a0b0c0d0e0f101112131415161718181819ff", "bf61610161629f0203ffff",
        "826161bf61626163ff", "bf6346756ef563416d7421ff",
    ];

    [Theory, MemberData(nameof(Others))]
    public void Every_other_item_of_appendix_A_is_passed_over_to_its_end(string hex)
    {
        var cbor = new CborReader(Bytes(hex));
        Assert.True(cbor.TryHead(out var head) && cbor.TrySkip(head) && cbor.IsAtEnd);
        Assert.Equal(CborFault.None, cbor.Fault);
        Assert.False(head.TryNumber(out _));
        Assert.Equal(1, Assert.Single(Decode($"81a30061616178{hex}0201")).Sample.Value);
        Assert.Equal(RefusalReason.SenmlWithoutNumber, Value(hex).Refusal);
    }

    [Theory, MemberData(nameof(Others))]
    public void An_item_of_appendix_A_that_is_cut_anywhere_is_truncated(string hex)
    {
        var whole = Bytes(hex);
        for (var length = 0; length < whole.Length; length++)
        {
            var cbor = new CborReader(whole.AsSpan(0, length));
            Assert.False(cbor.TryHead(out var head) && cbor.TrySkip(head));
            Assert.Equal((CborFault.Truncated, length), (cbor.Fault, cbor.FaultAt));
        }
    }

    // Section 3.4.4: the example of the RFC, and what is well-formed and no decimal fraction of a whole number.
    [Theory]
    [InlineData("c48221196ab3", 273.15)]
    [InlineData("c4820007", 7)]
    [InlineData("c482211902d1", 7.21)]
    [InlineData("c48221c2490000000000000002d1", 7.21)]
    [InlineData("c48221c24f0000000000000000000000000002d1", 7.21)]
    [InlineData("c48221c34202d0", -7.21)]
    [InlineData("c482213902d0", -7.21)]
    [InlineData("c4823a7fffffff1b7fffffffffffffff", 0)]
    [InlineData("c4823b7fffffffffffffff01", 0)]
    [InlineData("c4821903e800", 0)]
    [InlineData("c482201bffffffffffffffff", 1844674407370955161.5)]
    [InlineData("c482203bffffffffffffffff", -1844674407370955161.6)]
    public void A_decimal_fraction_is_the_nearest_double(string hex, double number) => Assert.Equal(number, Value(hex).Sample.Value);

    [Theory]
    [InlineData("c482190190 01")]
    [InlineData("c4821b7fffffffffffffff01")]
    public void A_decimal_fraction_beyond_every_double_is_not_finite(string hex) => Assert.Equal(RefusalReason.NotFinite, Value(hex).Refusal);

    [Theory]
    [InlineData("c400")] // no pair
    [InlineData("c48100")] // one
    [InlineData("c483000000")] // three
    [InlineData("c49f0000ff")] // of no stated length
    [InlineData("c482f93c0001")] // an exponent that is a float
    [InlineData("c4821bffffffffffffffff01")] // an exponent beyond 64 bits with sign
    [InlineData("c48200f93c00")] // a mantissa that is a float
    [InlineData("c48200c250ffffffffffffffffffffffffffffffff")] // one of sixteen bytes
    [InlineData("c48200c201")] // a bignum that is no octets
    [InlineData("c48200c25f4101ff")] // octets in pieces
    [InlineData("c48200c101")] // a time
    [InlineData("c24101")] // a bignum alone is none of the numbers of RFC 8428 section 6
    [InlineData("c11a514b67b0")] // a time
    [InlineData("c5822003")] // a bigfloat
    public void What_is_tagged_otherwise_is_no_number(string hex) => Assert.Equal((RefusalReason.SenmlWithoutNumber, "#1 v"), (Value(hex).Refusal, Value(hex).Detail));

    [Fact]
    public void Any_integer_and_any_float_of_the_platforms_encoder_is_the_same_double() =>
        Gen.OneOf(
            Gen.Long.Select(l => (Bytes: Write(w => w.WriteInt64(l)), Number: (double)l)),
            Gen.ULong.Select(u => (Bytes: Write(w => w.WriteUInt64(u)), Number: (double)u)),
            // Minus one less the argument, rounded once as its digits are.
            Gen.ULong.Select(u => (Bytes: Write(w => w.WriteCborNegativeIntegerRepresentation(u)), Number: double.Parse($"-{(UInt128)u + 1}", System.Globalization.CultureInfo.InvariantCulture))),
            Gen.Double.Where(double.IsFinite).Select(d => (Bytes: Write(w => w.WriteDouble(d)), Number: d)),
            Gen.Float.Where(float.IsFinite).Select(f => (Bytes: Write(w => w.WriteSingle(f)), Number: (double)f)),
            Gen.UShort.Select(BitConverter.UInt16BitsToHalf).Where(Half.IsFinite).Select(h => (Bytes: Write(w => w.WriteHalf(h)), Number: (double)h)))
        .Sample(
            pair => Assert.Equal(pair.Number, Value(Convert.ToHexString(pair.Bytes)).Sample.Value),
            iter: 50_000);
}
