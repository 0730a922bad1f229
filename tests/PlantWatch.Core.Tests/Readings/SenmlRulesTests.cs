using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using static PlantWatch.Core.Tests.Readings.Senml;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>RFC 8428 sections 4.1 to 4.5, one rule a test.</summary>
public class SenmlRulesTests
{
    [Theory]
    [InlineData("-5", -5)]
    [InlineData("12.5", 12.5)]
    [InlineData("-0.000001", -0.000001)]
    [InlineData("268435455.5", 268435455.5)]
    public void A_time_below_2_to_28_counts_from_the_reception_and_is_marked_as_no_identity(string t, double seconds)
    {
        var item = Assert.Single(Decode($$"""[{"n":"ph","v":7.2,"t":{{t}}}]"""));

        Assert.Equal(Arrival.UnixMicroseconds + (long)(seconds * 1e6), item.Sample.DeviceTime.UnixMicroseconds);
        Assert.True(item.TimeIsRelative);
    }

    [Fact]
    public void The_smallest_absolute_time_is_2_to_28()
    {
        var item = Assert.Single(Decode("""[{"n":"ph","v":7.2,"t":268435456}]"""));

        Assert.Equal("1978-07-04T21:24:16Z", item.Sample.DeviceTime.ToString()); // the RFC's own figure
        Assert.False(item.TimeIsRelative);
    }

    [Theory]
    [InlineData("""[{"n":"ph","v":7.2}]""")]
    [InlineData("""[{"n":"ph","v":7.2,"t":0}]""")]
    [InlineData("""[{"bt":60,"n":"ph","v":7.2,"t":-60}]""")]
    public void A_time_of_zero_says_that_the_device_knows_none(string json)
    {
        var item = Assert.Single(Decode(json));

        Assert.Equal(Instant.Never, item.Sample.DeviceTime);
        Assert.False(item.TimeIsRelative);
    }

    [Fact]
    public void Base_values_hold_from_their_record_until_they_are_replaced()
    {
        var samples = Samples("""[{"n":"a","v":1},{"bn":"x:","bv":100,"bu":"Cel","n":"b","v":2},{"n":"c","v":3},{"bn":"","bv":0,"n":"d","v":4}]""");

        Assert.Equal(["a", "x:b", "x:c", "d"], samples.Select(s => s.Name));
        Assert.Equal([1, 102, 103, 4], samples.Select(s => s.Value));
        Assert.Equal([null, "Cel", "Cel", "Cel"], samples.Select(s => s.Unit));
    }

    [Fact]
    public void The_order_of_fields_within_a_record_does_not_matter() =>
        Assert.Equal(new RawSample("x:a", Unix(1320078429), 107, "Cel"), Sample("""[{"v":7,"n":"a","bu":"Cel","bv":100,"bt":1320078429,"bn":"x:"}]"""));

    [Fact]
    public void A_missing_value_counts_as_zero_beside_a_base_value() =>
        Assert.Equal([20, 20.5], Samples("""[{"bv":20,"n":"a"},{"n":"a","v":0.5}]""").Select(s => s.Value));

    [Fact]
    public void A_sum_beside_a_value_is_passed_over() => Assert.Equal(3, Sample("""[{"n":"a","v":3,"s":99,"ut":60}]""").Value);

    [Fact]
    public void A_boolean_passes_only_as_a_switch() =>
        Assert.Equal(new RawSample("flow", Instant.Never, 1, "/"), Sample("""[{"bu":"pH","bv":6,"n":"flow","vb":true}]"""));

    [Fact]
    public void Escaped_labels_and_names_are_the_same_labels_and_names() =>
        Assert.Equal(new RawSample("ph-1", Instant.Never, 7.2, "pH"), Sample("""[{"\u0062n":"p\u0068-","n":"\u0031","\u0076":7.2,"u":"p\u0048"}]"""));

    [Fact]
    public void Each_item_names_the_bytes_of_its_own_record()
    {
        const string json = """[ {"n":"a","v":1}, {"n":"b","vs":"x"} ]""";
        var items = Decode(json);

        Assert.Equal(["""{"n":"a","v":1}""", """{"n":"b","vs":"x"}"""], items.Select(item => json[item.Bytes]));
    }

    [Fact]
    public void Records_that_share_a_name_and_unit_share_the_strings()
    {
        var samples = Samples("""[{"bn":"ph","bu":"pH","v":7.1},{"t":1,"v":7.2},{"t":2,"v":7.3}]""");

        Assert.All(samples, sample => Assert.Same(samples[0].Name, sample.Name));
        Assert.All(samples, sample => Assert.Same(samples[0].Unit, sample.Unit));
    }

    [Fact]
    public void Items_are_appended_to_those_already_there()
    {
        List<DecodedItem> items = [PlainNumber.Decode("7"u8)];
        SenmlJson.Decode("""[{"n":"a","v":1},"""u8, Arrival, items);

        Assert.Equal([RefusalReason.None, RefusalReason.MalformedSenml], items.Select(item => item.Refusal));
    }
}
