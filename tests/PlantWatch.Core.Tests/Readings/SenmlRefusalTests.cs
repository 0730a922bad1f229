using System.Text;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using static PlantWatch.Core.Tests.Readings.Senml;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Every reason a SenML pack or record can be refused for.</summary>
public class SenmlRefusalTests
{
    [Theory]
    [InlineData("")]
    [InlineData(" \n")]
    public void Nothing_at_all_is_empty(string json) => Assert.Equal(RefusalReason.Empty, Refused(json).Refusal);

    [Fact]
    public void A_pack_over_64_KiB_is_too_large_and_one_of_64_KiB_is_read()
    {
        var pack = """[{"n":"a","v":1}]""" + new string(' ', PayloadText.Largest - 17);
        Assert.Equal(1, Sample(pack).Value);
        Assert.Equal(RefusalReason.TooLarge, Refused(pack + " ").Refusal);
    }

    [Fact]
    public void Bytes_that_are_no_UTF8_are_refused_even_where_nobody_would_look()
    {
        byte[] payload = [.. """[{"n":"a","v":1,"note":" """u8, 0xff, .. "\"}]"u8];
        Assert.Equal(RefusalReason.InvalidUtf8, Assert.Single(Decode(payload)).Refusal);
    }

    [Theory]
    [InlineData("7.2")]
    [InlineData("""{"n":"a","v":1}""")]
    [InlineData("[]")]
    [InlineData("[ ]")]
    [InlineData("[1]")]
    [InlineData("[[]]")]
    [InlineData("""[{"n":"a","v":1}""")]
    [InlineData("""[{"n":"a","v":1}] x""")]
    [InlineData("""[{"n":"a","v":1},]""")]
    [InlineData("""[{"n":"a","v":1},7]""")]
    [InlineData("""[{"n":"a","v":NaN}]""")]
    [InlineData("""[{"n":"a","v":07}]""")]
    [InlineData("""[{"n":"a","v":1}]/**/""")]
    [InlineData("\uFEFF[]")]
    [InlineData("""[{"n":"\ud800","v":1}]""")]
    [InlineData("""[{"\ud800":1,"n":"a","v":1}]""")]
    public void What_is_no_array_of_records_is_malformed_as_a_whole(string json) =>
        Assert.Equal((RefusalReason.MalformedSenml, Range.All), (Refused(json).Refusal, Refused(json).Bytes));

    [Fact]
    public void Nesting_is_bounded()
    {
        Assert.Equal(1, Sample($$"""[{"n":"a","v":1,"x":{{Nested(SenmlJson.Deepest - 2)}}}]""").Value);
        Assert.Equal(RefusalReason.MalformedSenml, Refused($$"""[{"n":"a","v":1,"x":{{Nested(SenmlJson.Deepest - 1)}}}]""").Refusal);
        Assert.Equal(RefusalReason.MalformedSenml, Refused(new string('[', 30_000)).Refusal);

        static string Nested(int depth) => new string('[', depth) + new string(']', depth);
    }

    [Theory]
    [InlineData("""{"bn":7}""", "#2 bn")]
    [InlineData("""{"bt":"now"}""", "#2 bt")]
    [InlineData("""{"bu":null}""", "#2 bu")]
    [InlineData("""{"bv":true}""", "#2 bv")]
    [InlineData("""{"bs":"1"}""", "#2 bs")]
    [InlineData("""{"bver":"10"}""", "#2 bver")]
    [InlineData("""{"bver":0}""", "#2 bver 0")]
    [InlineData("""{"bver":-1}""", "#2 bver -1")]
    [InlineData("""{"bver":9.5}""", "#2 bver 9.5")]
    [InlineData("""{"bver":5}""", "#2 bver 5")] // the first record said 10 by saying nothing
    [InlineData("""{"bn":"x","bn":"y"}""", "#2 bn")]
    public void A_base_field_that_cannot_be_read_spoils_the_pack_since_the_rest_would_rest_on_it(string record, string detail)
    {
        var item = Refused($$"""[{"n":"a","v":1},{{record}},{"n":"b","v":2}]""");

        Assert.Equal((RefusalReason.MalformedSenml, detail), (item.Refusal, item.Detail));
    }

    [Theory]
    [InlineData("""{"n":"b","v":2,"t":"now"}""", RefusalReason.MalformedSenml, "#2 t")]
    [InlineData("""{"n":"b","v":2,"u":1}""", RefusalReason.MalformedSenml, "#2 u")]
    [InlineData("""{"n":1,"v":2}""", RefusalReason.MalformedSenml, "#2 n")]
    [InlineData("""{"n":"b","v":2,"s":"x"}""", RefusalReason.MalformedSenml, "#2 s")]
    [InlineData("""{"n":"b","v":2,"ut":[]}""", RefusalReason.MalformedSenml, "#2 ut")]
    [InlineData("""{"n":"b","v":2,"v":3}""", RefusalReason.MalformedSenml, "#2 v")]
    [InlineData("""{"n":"b","v":"2"}""", RefusalReason.SenmlWithoutNumber, "#2 v")]
    [InlineData("""{"n":"b","v":null}""", RefusalReason.SenmlWithoutNumber, "#2 v")]
    [InlineData("""{"n":"b","vb":1}""", RefusalReason.SenmlWithoutNumber, "#2 vb")]
    [InlineData("""{"n":"b","vs":2}""", RefusalReason.SenmlWithoutNumber, "#2 vs")]
    [InlineData("""{"n":"b","v":2,"vs":"2"}""", RefusalReason.SenmlWithoutNumber, "#2 v vs")]
    [InlineData("""{"n":"b","v":2,"vb":true}""", RefusalReason.SenmlWithoutNumber, "#2 v vb")]
    [InlineData("""{"n":"b","s":2}""", RefusalReason.SenmlWithoutNumber, "#2 s")]
    [InlineData("""{"n":"b"}""", RefusalReason.SenmlWithoutNumber, "#2")]
    [InlineData("""{"n":"b","t":-1}""", RefusalReason.SenmlWithoutNumber, "#2")]
    [InlineData("""{"n":"b","v":1e400}""", RefusalReason.NotFinite, "#2 v")]
    [InlineData("""{"n":"b","v":2,"t":1e400}""", RefusalReason.NotFinite, "#2 t")]
    [InlineData("""{"n":"b","v":2,"t":-1e300}""", RefusalReason.ClockBehind, "#2 t -1E+300")]
    [InlineData("""{"n":"b","v":2,"t":1e12}""", RefusalReason.ClockAhead, "#2 t 1000000000000")]
    [InlineData("""{"n":"b","v":2,"frozen_":true}""", RefusalReason.UnsupportedSenml, "#2 frozen_")]
    [InlineData("""{"v":2}""", RefusalReason.InvalidName, "#2")]
    [InlineData("""{"n":"","v":2}""", RefusalReason.InvalidName, "#2")]
    [InlineData("""{"n":"-b","v":2}""", RefusalReason.InvalidName, "#2 -b")]
    [InlineData("""{"n":"pool 1","v":2}""", RefusalReason.InvalidName, "#2 pool 1")]
    [InlineData("""{"n":"b#","v":2}""", RefusalReason.InvalidName, "#2 b#")]
    [InlineData("""{"n":"b\u0000","v":2}""", RefusalReason.InvalidName, "#2 b\uFFFD")]
    [InlineData("""{"n":"p\u00fcH","v":2}""", RefusalReason.InvalidName, "#2 p\u00fcH")]
    [InlineData("""{"n":"b","v":2,"u":"abcdefghijklmnopqrstuvwxyz0123456789"}""", RefusalReason.WrongUnit, "#2 abcdefghijklmnopqrstuvwxyz0123456789")]
    public void A_record_that_is_wrong_in_itself_does_not_spoil_its_neighbours(string record, RefusalReason reason, string detail)
    {
        var items = Decode($$"""[{"n":"a","v":1},{{record}},{"n":"c","v":3}]""");

        Assert.Equal([RefusalReason.None, reason, RefusalReason.None], items.Select(item => item.Refusal));
        Assert.Equal(detail, items[1].Detail);
        Assert.Equal([1, 3], [items[0].Sample.Value, items[2].Sample.Value]);
    }

    [Fact]
    public void The_base_fields_of_a_refused_record_hold_for_those_that_follow()
    {
        var items = Decode("""[{"bn":"x:","bv":5,"n":"a","vs":"?"},{"n":"b","v":2}]""");

        Assert.Equal(("x:b", 7), (items[1].Sample.Name, items[1].Sample.Value));
    }

    [Theory]
    [InlineData("""[{"bver":11,"n":"a","v":1}]""", "#1 bver 11")]
    [InlineData("""[{"bver":26,"n":"a","v":1}]""", "#1 bver 26")] // feature bits of RFC 9100
    [InlineData("""[{"n":"a","v":1},{"bfoo_":1,"n":"b","v":2}]""", "#2 bfoo_")] // a base field not understood
    public void A_version_or_base_field_that_must_be_understood_and_is_not_refuses_the_pack(string json, string detail)
    {
        var item = Refused(json);

        Assert.Equal((RefusalReason.UnsupportedSenml, detail), (item.Refusal, item.Detail));
    }

    [Theory]
    [InlineData("""[{"bt":1e400},{"n":"a","v":1}]""")]
    [InlineData("""[{"bv":1e400},{"n":"a","v":1}]""")]
    [InlineData("""[{"bv":1.7e308,"n":"a","v":1.7e308}]""")]
    public void Numbers_beyond_a_double_are_not_finite(string json) => Assert.Equal(RefusalReason.NotFinite, Refused(json).Refusal);

    [Theory]
    [InlineData("""[{"bn":"x:"}]""")]
    [InlineData("""[{"bn":"x","bv":7.2},{"bt":1320078429}]""")]
    [InlineData("""[{}]""")]
    [InlineData("""[{"l":1}]""")]
    public void A_pack_without_any_measurement_is_still_one_refused_item(string json) =>
        Assert.Equal(RefusalReason.SenmlWithoutNumber, Refused(json).Refusal);

    [Fact]
    public void A_name_is_bounded_so_that_a_small_pack_cannot_grow_into_megabytes()
    {
        var longest = new string('a', 255);
        Assert.Equal(longest + "b", Sample($$"""[{"bn":"{{longest}}","n":"b","v":1}]""").Name);
        Assert.Equal(RefusalReason.InvalidName, Refused($$"""[{"bn":"{{longest}}","n":"bc","v":1}]""").Refusal);
    }

    [Fact]
    public void The_largest_pack_of_nothing_but_bad_records_stays_small()
    {
        var items = Decode("[" + string.Join(',', Enumerable.Repeat("{}", 21_000)) + "]");

        Assert.Equal(21_000, items.Count);
        Assert.All(items, item => Assert.True(item.Detail.Length < 10));
    }

    [Fact]
    public void The_version_may_be_repeated_and_may_be_an_older_one() =>
        Assert.Equal(2, Samples("""[{"bver":5,"n":"a","v":1},{"bver":5.0,"n":"a","v":2}]""").Count);

    [Fact]
    public void A_receiver_without_a_list_is_a_programming_error() =>
        Assert.Throws<ArgumentNullException>(() => SenmlJson.Decode(Encoding.UTF8.GetBytes("[]"), Arrival, null!));
}
