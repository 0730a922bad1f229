using System.Text.RegularExpressions;
using CsCheck;
using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>MQTT 5.0 section 4.7: topic names and topic filters.</summary>
public class TopicFiltersTests
{
    [Theory]
    [InlineData("#", "pool/ph", true)]
    [InlineData("pool/#", "pool/1/ph", true)]
    [InlineData("pool/#", "pool", true)] // # includes the parent level
    [InlineData("+/#", "pool", true)] // and mosquitto delivers it so
    [InlineData("pool/+", "pool/ph", true)]
    [InlineData("pool/+", "pool", false)]
    [InlineData("pool/+", "pool/1/ph", false)]
    [InlineData("+/+", "/ph", true)] // an empty level is a level
    [InlineData("pool/+/#", "pool/+", true)]
    [InlineData("pool/+", "pool/#", false)]
    [InlineData("pool/ph", "pool/+", false)]
    [InlineData("pool/ph", "Pool/ph", false)]
    [InlineData("#", "$SYS/uptime", false)] // section 4.7.2
    [InlineData("+/uptime", "$SYS/uptime", false)]
    [InlineData("$SYS/#", "$SYS/uptime", true)]
    [InlineData("#", "$share/group/pool/ph", false)]
    public void A_filter_covers_what_it_matches_whole(string broad, string filter, bool covers) =>
        Assert.Equal(covers, TopicFilters.Covers(broad, filter));

    [Fact]
    public void What_another_filter_covers_is_left_out_and_twins_are_one() =>
        Assert.Equal(
            ["acid/tank", "pool/#"],
            TopicFilters.Fewest(["pool/ph", "pool/orp", "acid/tank", "acid/tank"], ["pool/+", "pool/#", ""]));

    [Fact]
    public void Filters_that_only_cross_stay_both() => Assert.Equal(["a/+/c", "a/b/+"], TopicFilters.Fewest([], ["a/b/+", "a/+/c"]));

    [Fact]
    public void No_topic_is_lost_by_leaving_filters_out()
    {
        var level = Gen.Int[0, 4].Select(i => new[] { "a", "b", "", "+", "#" }[i]);
        var filters = level.Array[1, 4].Select(Filter).Array[1, 6];
        var topic = Gen.Int[0, 3].Select(i => new[] { "a", "b", "", "$x" }[i]).Array[1, 4].Select(levels => string.Join('/', levels)).Where(text => text.Length > 0);
        Gen.Select(filters, topic).Sample((all, name) =>
        {
            var fewest = TopicFilters.Fewest(all, []);
            Assert.Equal(all.Any(filter => Matches(name, filter)), fewest.Any(filter => Matches(name, filter)));
            foreach (var kept in fewest) Assert.DoesNotContain(fewest, other => other != kept && TopicFilters.Covers(other, kept));
        }, iter: 20_000);

        static string Filter(string[] levels)
        {
            var end = Array.IndexOf(levels, "#");
            var text = string.Join('/', end < 0 ? levels : levels[..(end + 1)]);
            return text.Length == 0 ? "a" : text;
        }

        // Section 4.7 as a pattern. The library's comparer is no yardstick: it has +/b not match /b, which section 4.7.1.3 says it does.
        static bool Matches(string topic, string filter) =>
            !(topic[0] == '$' && (filter[0] is '+' or '#')) && Regex.IsMatch(topic, "^" + (filter == "#" ? ".*" : filter.Replace("/#", "(/.*)?").Replace("+", "[^/]*")) + "$");
    }
}
