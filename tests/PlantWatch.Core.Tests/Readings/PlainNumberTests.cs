using System.Globalization;
using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

public class PlainNumberTests
{
    [Theory]
    [InlineData("7.21", 7.21)]
    [InlineData(" 7.21\r\n", 7.21)]
    [InlineData("\t-3\n", -3)]
    [InlineData("+650", 650)]
    [InlineData("6.5e2", 650)]
    [InlineData("65E+1", 650)]
    [InlineData("5e-1", 0.5)]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("007.20", 7.2)]
    [InlineData("0.1", 0.1)]
    [InlineData("1e-400", 0)]
    public void A_decimal_number_is_a_sample_without_name_unit_or_time(string text, double expected)
    {
        var item = Decode(text);

        Assert.True(item.IsSample);
        Assert.Equal(new RawSample("", Instant.Never, expected, null), item.Sample);
        Assert.Equal((RefusalReason.None, ""), (item.Refusal, item.Detail));
    }

    [Theory]
    [InlineData("7,21")]
    [InlineData("1,234.5")]
    [InlineData("1 234")]
    [InlineData("7.2.1")]
    [InlineData("7.2 pH")]
    [InlineData("pH 7.2")]
    [InlineData("0x1F")]
    [InlineData("e5")]
    [InlineData("1e")]
    [InlineData("1e+")]
    [InlineData("1e1.5")]
    [InlineData(".")]
    [InlineData("-")]
    [InlineData("--1")]
    [InlineData("(7)")]
    [InlineData("\"7.2\"")]
    [InlineData("{\"v\":7.2}")]
    [InlineData("7.2\0")]
    [InlineData("\u0667.\u0662")] // Arabic-Indic digits
    [InlineData("\u22127.2")] // the typographic minus
    [InlineData("\uFEFF7.2")] // a byte order mark
    public void What_is_not_one_decimal_number_is_refused_with_an_excerpt(string text)
    {
        var item = Decode(text);

        Assert.Equal(RefusalReason.NotANumber, item.Refusal);
        Assert.False(item.IsSample);
        Assert.NotEmpty(item.Detail);
        Assert.DoesNotContain(item.Detail, char.IsControl);
    }

    [Theory]
    [InlineData("NaN")]
    [InlineData("nan")]
    [InlineData("-nan")]
    [InlineData("inf")]
    [InlineData("-Inf")]
    [InlineData("+Infinity")]
    [InlineData("INFINITY")]
    [InlineData("1e400")]
    [InlineData("-1e400")]
    public void NaN_and_infinity_are_named_as_what_they_are(string text) =>
        Assert.Equal(RefusalReason.NotFinite, Decode(text).Refusal);

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("\r\n")]
    public void Nothing_at_all_is_refused_as_empty(string text) => Assert.Equal(RefusalReason.Empty, Decode(text).Refusal);

    [Fact]
    public void A_payload_of_64_KiB_is_decoded_and_one_byte_more_is_too_large()
    {
        var largest = new string('0', PayloadText.Largest - 1) + "7";
        Assert.Equal(7, Decode(largest).Sample.Value);
        Assert.Equal(RefusalReason.TooLarge, Decode("0" + largest).Refusal);
        Assert.Equal(RefusalReason.TooLarge, PlainNumber.Decode(new byte[PayloadText.WorthKeeping]).Refusal);
    }

    [Theory]
    [InlineData(new byte[] { 0x37, 0xff }, "0xff @ 1")]
    [InlineData(new byte[] { 0xc0, 0x80 }, "0xc0 @ 0")] // overlong
    [InlineData(new byte[] { 0x37, 0xed, 0xa0, 0x80 }, "0xed @ 1")] // half a surrogate pair
    [InlineData(new byte[] { 0x37, 0xe2, 0x82 }, "0xe2 @ 1")] // cut short
    public void Bytes_that_are_no_UTF8_are_refused_with_their_place(byte[] payload, string detail)
    {
        var item = PlainNumber.Decode(payload);

        Assert.Equal(RefusalReason.InvalidUtf8, item.Refusal);
        Assert.Equal(detail, item.Detail);
    }

    [Fact]
    public void The_decimal_point_holds_in_a_culture_that_writes_a_comma()
    {
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal(7.21, Decode("7.21").Sample.Value);
            Assert.Equal(RefusalReason.NotANumber, Decode("7,21").Refusal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Minus_zero_is_kept_as_zero() => Assert.False(double.IsNegative(Decode("-0.0").Sample.Value));

    [Fact]
    public void A_long_text_is_shown_by_its_beginning()
    {
        var item = Decode(new string('x', 5000));

        Assert.Equal(new string('x', 40) + "\u2026", item.Detail);
    }

    [Fact]
    public void An_item_that_nobody_made_is_no_sample()
    {
        var item = default(DecodedItem);

        Assert.False(item.IsSample);
        Assert.Equal(RefusalReason.Empty, item.Refusal);
        Assert.Equal("", item.Detail);
    }

    private static DecodedItem Decode(string text) => PlainNumber.Decode(Encoding.UTF8.GetBytes(text));
}
