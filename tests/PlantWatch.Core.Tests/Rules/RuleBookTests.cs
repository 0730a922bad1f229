using System.Reflection;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Rule, page and evidence stand and fall together.</summary>
public sealed class RuleBookTests
{
    private static readonly IReadOnlyList<RulesPage> Page = RulesPage.Read();

    public static TheoryData<string> Rules => [.. RuleBook.All.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void The_page_names_every_rule_once_and_no_other() =>
        Assert.Equal(RuleBook.All.Keys.Order(StringComparer.Ordinal), Page.Select(p => p.Number));

    [Fact]
    public void Evidence_names_no_rule_that_does_not_exist() =>
        Assert.Empty(Evidence().Except(RuleBook.All.Keys));

    [Theory, MemberData(nameof(Rules))]
    public void A_rule_has_a_test_that_bears_its_number(string rule) =>
        Assert.True(Evidence().Contains(rule), $"no test bears [Evidence(\"{rule}\")]");

    [Theory, MemberData(nameof(Rules))]
    public void The_page_says_of_a_rule_what_a_person_needs(string rule)
    {
        var page = Page.Single(p => p.Number == rule);
        Assert.EndsWith(".", page.Sentence, StringComparison.Ordinal);
        foreach (var row in new[] { "cause", "consequence", "what to do", "time to respond", "priority", "on-delay", "off-delay", "deadband", "suppressed", "clears", "provenance" })
            Assert.True(page.Rows.TryGetValue(row, out var text) && text.Length > 2, $"{rule} lacks its {row}");
    }

    private static readonly Dictionary<SuppressedWhile, string> Suppressing = new()
    {
        [SuppressedWhile.NoSampleFlow] = "while the probe's sample cell has no flow", [SuppressedWhile.Drained] = "while the pool is drained",
        [SuppressedWhile.NotOpen] = "while the pool is not open", [SuppressedWhile.Backwash] = "while a filter is backwashed",
        [SuppressedWhile.ProbeWork] = "while a person works on the probe",
    };

    // What the page calls the thing that clears a rule which watches a measured value: time alone does not.
    private static readonly string[] Measured = ["reading", "level", "pressure", "full window", "trend", "laboratory result", "mean of an hour"];

    [Theory, MemberData(nameof(Rules))]
    public void Page_and_code_agree(string number)
    {
        var (rule, page) = (RuleBook.All[number], Page.Single(p => p.Number == number));
        Assert.Equal(rule.Priority.ToString(), page.Rows["priority"], ignoreCase: true);
        Assert.Equal(Seconds(rule.OnDelay), page.Rows["on-delay"]);
        Assert.Equal(Seconds(rule.OffDelay), page.Rows["off-delay"]);
        foreach (var (cause, words) in Suppressing) Assert.Equal(rule.SuppressedWhile.HasFlag(cause), page.Rows["suppressed"].Contains(words, StringComparison.Ordinal));
        Assert.Equal(rule.SuppressedWhile == SuppressedWhile.Never, page.Rows["suppressed"].StartsWith("never", StringComparison.Ordinal));
        Assert.Equal(rule.Latches, page.Rows["clears"].Contains("it latches", StringComparison.Ordinal));
        Assert.Equal(rule.ClearsByReading, Measured.Any(m => page.Rows["clears"].StartsWith($"by a {m} ", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_stands_speaks_up_anew_by_its_priority_and_an_incident_once_a_shift()
    {
        // The page says: one hour, four, eight, and never (common practice).
        foreach (var rule in RuleBook.All.Values.Where(r => r != RuleBook.IncidentOpen))
            Assert.Equal(rule.Priority switch { Core.Plans.Priority.Critical => 1, Core.Plans.Priority.High => 4, Core.Plans.Priority.Medium => 8, _ => (double?)null }, rule.ReAlarmAfter?.TotalHours);
        Assert.Equal(8, RuleBook.IncidentOpen.ReAlarmAfter?.TotalHours);
    }

    [Fact]
    public void What_is_about_people_is_neither_shelved_nor_taken_out_of_service()
    {
        foreach (var rule in RuleBook.All.Values)
            Assert.Equal((rule.Priority != Core.Plans.Priority.Critical, rule.Priority != Core.Plans.Priority.Critical && rule != RuleBook.PlannedWorkOverdue), (rule.Shelvable, rule.MayLeaveService));
    }

    [Fact]
    public void Deadbands_are_those_that_the_page_gives() =>
        // About one per cent of the operating range, 10 mV (common practice).
        Assert.Equal([0.05, 10, 0.3, 0.05, 50, 0], new[] { Measurand.Ph, Measurand.Orp, Measurand.Temperature, Measurand.FreeChlorine, Measurand.Conductivity, Measurand.SampleFlow }.Select(Deadband.Of));

    [Fact]
    public void Delays_leave_most_of_the_time_to_respond()
    {
        // An on-delay is shorter than a quarter of the time to respond (common practice): at once 4 minutes at most, within the hour 15.
        foreach (var rule in RuleBook.All.Values)
            Assert.True(rule.OnDelay <= (rule.Priority >= Core.Plans.Priority.High ? TimeSpan.FromSeconds(30) : TimeSpan.FromMinutes(2)), rule.Number);
    }

    private static string Seconds(TimeSpan delay) => delay == TimeSpan.Zero ? "none" : $"{delay.TotalSeconds:0} s";

    private static HashSet<string> Evidence() =>
    [
        .. typeof(RuleBookTests).Assembly.GetTypes()
            .SelectMany(t => t.GetMethods(BindingFlags.Instance | BindingFlags.Public))
            .Where(m => m.IsDefined(typeof(FactAttribute), inherit: true))
            .SelectMany(m => m.GetCustomAttributes<EvidenceAttribute>()).Select(e => e.Rule),
    ];
}
