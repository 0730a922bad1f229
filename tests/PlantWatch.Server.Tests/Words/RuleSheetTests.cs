using PlantWatch.Core.Rules;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Words;

/// <summary>docs/rules.md is carried by the server and is the one source of what is said of a rule.</summary>
public sealed class RuleSheetTests
{
    private const string Section = """
        R-010 Below the limit

        A live value lies below its limit.

        | | |
        |---|---|
        | cause | a pump stands |
        | consequence | The water leaves its range. |
        | what to do | Test by hand. |
        | time to respond | within the hour |
        | priority | medium |
        | on-delay | 120 s |
        | off-delay | 120 s |
        | deadband | 0.05 pH |
        | suppressed | never |
        | clears | by a reading |
        | provenance | common practice |
        """;

    [Fact]
    public void Every_section_of_the_page_can_be_read_and_every_rule_has_one()
    {
        var page = RuleSheets.Read(Repository.ReadText("docs", "rules.md"));
        Assert.Equal(RuleBook.All.Keys.Order(StringComparer.Ordinal), page.Select(r => r.Number));
        Assert.Equal(page.AsEnumerable(), RuleSheets.All);
    }

    [Fact]
    public void What_stands_with_an_alarm_are_the_words_of_the_page() => Assert.All(RuleSheets.All, rule => Assert.Equal(
        (rule.Title, rule.Consequence, rule.Action, rule.Respond),
        (Wording.English.OfRule(rule.Number, "title"), Wording.English.OfRule(rule.Number, "consequence"), Wording.English.OfRule(rule.Number, "action"), Wording.English.OfRule(rule.Number, "respond"))));

    [Fact]
    public void A_section_is_read_into_its_parts()
    {
        var sheet = RuleSheet.Parse(Section);
        Assert.Equal(("R-010", "Below the limit", "A live value lies below its limit.", "a pump stands", "within the hour", "120 s"), (sheet.Number, sheet.Title, sheet.Sentence, sheet.Cause, sheet.Respond, sheet.OnDelay));
    }

    [Theory]
    [InlineData("R-010 Below", "R-10 Below", "no heading of a rule")]
    [InlineData("A live value lies below its limit.\n", "", "R-010 has no sentence")]
    [InlineData("| cause | a pump stands |\n", "", "R-010 lacks its cause")]
    [InlineData("| what to do | Test by hand. |\n", "| what to do |  |\n", "R-010 lacks its what to do")]
    [InlineData("| cause | a pump stands |\n", "| cause | a pump stands\n", "R-010 has a row that is not two cells")]
    [InlineData("| provenance | common practice |", "", "R-010 lacks its provenance")]
    [InlineData("| on-delay | 120 s |\n", "| on-delay | 120 s |\n| on-delay | 60 s |\n", "R-010 says its on-delay twice")]
    public void A_section_that_is_spoiled_is_told_by_its_number_and_what_it_lacks(string was, string spoiled, string told)
    {
        Assert.Contains(was, Section, StringComparison.Ordinal);
        Assert.Contains(told, Assert.Throws<FormatException>(() => RuleSheet.Parse(Section.Replace(was, spoiled, StringComparison.Ordinal))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(LanguageTests.Languages), MemberType = typeof(LanguageTests))]
    public void A_page_in_another_language_has_no_rule_of_its_own_and_no_other_delays(string code)
    {
        var page = RuleSheets.By(Language.Find(code)!);
        Assert.Equal(RuleSheets.All.Select(Delays), page.Values.Select(Delays).OrderBy(r => r.Number, StringComparer.Ordinal));
    }

    [Fact]
    public void What_stands_with_an_alarm_is_said_in_German() =>
        Assert.Equal("pH-Wert außerhalb des Stopps, der immer gilt", Wording.Of(Language.Find("de")!).OfRule("R-001", "title"));

    [Fact]
    public void A_number_that_stands_twice_stops_the_reading() =>
        Assert.Contains("R-010", Assert.Throws<FormatException>(() => RuleSheets.Read($"# The rules\n\n## {Section}\n\n## {Section}")).Message, StringComparison.Ordinal);

    // Number of the rule and the figures of its delays, which no language writes otherwise.
    private static (string Number, string On, string Off) Delays(RuleSheet rule) => (rule.Number, Figures(rule.OnDelay), Figures(rule.OffDelay));

    private static string Figures(string text) => string.Concat(text.Where(char.IsAsciiDigit));
}
