using PlantWatch.Core.Quantities;
using static PlantWatch.Core.Tests.Readings.SenmlC;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The worked example of RFC 8428 section 6, byte by byte, and its neighbours by the platform's encoder.</summary>
public class SenmlCborExamplesTests
{
    // RFC 8428 section 6: the dump of 195 bytes of the pack of section 5.1.2 in CBOR.
    private const string Section6 = """
        87 a7 21 78 1b 75 72 6e 3a 64 65 76 3a 6f 77 3a 31 30 65 32 30 37 33 61 30 31 30 38 30 30 36 3a
        22 fb 41 d3 03 a1 5b 00 10 62 23 61 41 20 05 00 67 76 6f 6c 74 61 67 65 01 61 56 02 fb 40 5e 06
        66 66 66 66 66 a3 00 67 63 75 72 72 65 6e 74 06 24 02 fb 3f f3 33 33 33 33 33 33 a3 00 67 63 75
        72 72 65 6e 74 06 23 02 fb 3f f4 cc cc cc cc cc cd a3 00 67 63 75 72 72 65 6e 74 06 22 02 fb 3f
        f6 66 66 66 66 66 66 a3 00 67 63 75 72 72 65 6e 74 06 21 02 f9 3e 00 a3 00 67 63 75 72 72 65 6e
        74 06 20 02 fb 3f f9 99 99 99 99 99 9a a3 00 67 63 75 72 72 65 6e 74 06 00 02 fb 3f fb 33 33 33
        33 33 33
        """;

    private const string TheSameInJson = """
        [
          {"bn":"urn:dev:ow:10e2073a0108006:","bt":1276020076.001,"bu":"A","bver":5,"n":"voltage","u":"V","v":120.1},
          {"n":"current","t":-5,"v":1.2}, {"n":"current","t":-4,"v":1.30}, {"n":"current","t":-3,"v":0.14e1},
          {"n":"current","t":-2,"v":1.5}, {"n":"current","t":-1,"v":1.6}, {"n":"current","t":0,"v":1.7}
        ]
        """;

    [Fact]
    public void Section_6_the_example_in_CBOR_gives_what_it_gives_in_JSON()
    {
        var payload = Bytes(Section6.ReplaceLineEndings(""));
        Assert.Equal(195, payload.Length);
        Assert.Equal(Senml.Samples(TheSameInJson), Samples(payload));
        Assert.Equal("2010-06-08T18:01:11.001Z", Samples(payload)[1].DeviceTime.ToString());
    }

    [Fact]
    public void Section_6_a_stream_is_an_indefinite_array_and_reads_the_same()
    {
        var pack = Bytes(Section6.ReplaceLineEndings(""));
        byte[] stream = [0x9f, .. pack.AsSpan(1), 0xff];
        Assert.Equal(Samples(pack), Samples(stream));
    }

    [Fact]
    public void Each_item_names_the_bytes_of_its_own_record()
    {
        var payload = Bytes("82 a2 00 61 61 02 01 a1 03 61 78");
        Assert.Equal(["A20061610201", "A1036178"], Decode(payload).Select(item => Convert.ToHexString(payload[item.Bytes])));
    }

    [Theory]
    [InlineData("7.21")]
    [InlineData("-0.003")]
    [InlineData("28.40")]
    [InlineData("1234567890.1234567890123456789")]
    [InlineData("-79228162514264337593543950335")]
    [InlineData("0.0000000000000000000000000001")]
    public void A_decimal_of_the_platforms_encoder_is_the_double_that_its_digits_are_in_JSON(string digits)
    {
        var value = decimal.Parse(digits, System.Globalization.CultureInfo.InvariantCulture);
        var payload = Write(writer =>
        {
            writer.WriteStartArray(1);
            writer.WriteStartMap(2);
            writer.WriteInt32(0);
            writer.WriteTextString("a");
            writer.WriteInt32(2);
            writer.WriteDecimal(value);
            writer.WriteEndMap();
            writer.WriteEndArray();
        });
        Assert.Equal(Senml.Sample($$"""[{"n":"a","v":{{digits}}}]""").Value, Assert.Single(Samples(payload)).Value);
    }

    [Fact]
    public void Records_that_share_a_name_and_unit_share_the_strings()
    {
        var samples = Samples("83 a3 21 62 70 68 23 62 70 48 02 07 a2 06 01 02 08 a2 06 02 02 07");
        Assert.Equal([("ph", "pH", 7), ("ph", "pH", 8), ("ph", "pH", 7.0)], samples.Select(s => (s.Name, s.Unit, s.Value)));
        Assert.All(samples, sample => Assert.Same(samples[0].Name, sample.Name));
        Assert.Equal(Senml.Arrival + TimeSpan.FromSeconds(2), samples[2].DeviceTime);
        Assert.Equal(Instant.Never, samples[0].DeviceTime);
    }
}
