using System.Text.RegularExpressions;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Words;

/// <summary>Sentences in several languages: none lacks one, none loses a figure, and figures are written as each language writes them.</summary>
public sealed partial class LanguageTests
{
    public static TheoryData<string> Languages => [.. Language.All.Select(l => l.Code)];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_language_says_what_English_says_and_nothing_else(string code) =>
        Assert.Equal(Wording.Written(Language.English).Keys.Order(StringComparer.Ordinal), Wording.Written(Language.Find(code)!).Keys.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_sentence_has_the_figures_and_names_of_the_English_one(string code)
    {
        var (english, other) = (Wording.Written(Language.English), Wording.Written(Language.Find(code)!));
        var wrong = english.Keys.Where(other.ContainsKey).Where(c => !Holes(english[c]).SequenceEqual(Holes(other[c]))).ToList();
        Assert.Empty(wrong);
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void No_sentence_is_empty_where_the_English_one_is_not(string code)
    {
        var other = Wording.Written(Language.Find(code)!);
        Assert.Empty(Wording.Written(Language.English).Where(e => e.Value.Length > 0 && string.IsNullOrWhiteSpace(other.GetValueOrDefault(e.Key, "-"))).Select(e => e.Key));
    }

    /// <summary>RFC 9110, 12.5.4: the highest weight wins, none is 1, and 0 means not acceptable.</summary>
    [Theory]
    [InlineData("en", "en")]
    [InlineData("xx, en-GB;q=0.5", "en")]
    [InlineData("", "en")]
    [InlineData("no such thing;;;", "en")]
    [InlineData("tlh;q=1.0, *;q=0.1", "en")]
    [InlineData("de;q=0.4, fr", "fr")]
    [InlineData("de;q=0, es;q=0.2", "es")]
    [InlineData("xx, DE-ch", "de")]
    public void The_best_language_that_is_asked_for_is_spoken(string asked, string spoken) => Assert.Equal(spoken, Language.Asked(asked).Code);

    [Fact]
    public void A_figure_is_written_with_the_comma_where_a_language_has_one()
    {
        var comma = new Language("de", ",", ".");
        Assert.Equal("\u22121.234,5", comma.Write("\u22121,234.5"));
        Assert.Equal("0.21", Language.English.Write("0.21"));
    }

    [Theory]
    [InlineData(1, "1 second")]
    [InlineData(90, "90 seconds")]
    [InlineData(60 * 90, "90 minutes")]
    [InlineData(3600 * 2.5, "2.5 hours")]
    [InlineData(86_400 * 3, "3 days")]
    public void A_length_of_time_is_said_as_people_say_it(double seconds, string said) => Assert.Equal(said, Spans.Of(seconds, Wording.English));

    [Fact]
    public void What_no_language_knows_is_said_by_its_code() => Assert.Equal("no.such", Wording.English.Text(Reason.Of("no.such")));

    private static IEnumerable<string> Holes(string sentence) => Hole().Matches(sentence).Select(m => m.Groups[1].Value).Distinct().Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\{(\d)(?::[^}]+)?\}")]
    private static partial Regex Hole();
}
