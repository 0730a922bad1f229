using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes.Story;

/// <summary>Some stories written out in full, so that a change of a figure shows in what people would be told. Rewritten with PLANTWATCH_WRITE_GENERATED=true.</summary>
public sealed partial class GoldenStoryTests
{
    private static readonly string Golden = Source.PathOf("tests", "PlantWatch.Core.Tests", "Probes", "Story", "told.txt");

    private static readonly Dictionary<string, string> Words = new[] { "story.json", "probes.json", "names.json" }
        .SelectMany(file => JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(Source.PathOf("src", "PlantWatch.Server", "Words", "en", file)))!)
        .ToDictionary(StringComparer.Ordinal);

    private static (string Title, ToldPool Pool)[] Stories =>
    [
        ("a quiet morning", new() { OrpRead = ToldPool.OrpAt(7.4, 1.5), ChlorineRead = 1.52 }),
        ("a spoilt pH test", new() { PhTest = 7.9, PhRead = 7.3, OrpRead = ToldPool.OrpAt(7.3, 1.5) }),
        ("a drifted pH probe", new() { PhTest = 7.3, PhRead = 7.7, OrpRead = ToldPool.OrpAt(7.3, 1.5), PhChecks = Standing.OutOfSpecification, PhBias = 0.35, Origin = SignalOrigin.PanelScaled, Panel = 7.7 }),
        ("a bleached chlorine test", new() { ChlorineTest = 0, ChlorineSuspect = true, OrpRead = ToldPool.OrpAt(7.4, 6) }),
        ("a pool that really lost its chlorine", new() { ChlorineTest = 0.3, ChlorineRead = 0.32, OrpRead = ToldPool.OrpAt(7.4, 0.31) }),
        ("two that differ and no witness", new() { PhTest = 7.7, ChlorineTest = null, PhRead = 7.3 }),
        ("a probe that leapt", new() { PhTest = 7.4, ChlorineTest = null, PhRead = 7.75, PhSignal = SignalHealth.New with { Standing = Standing.Good, LeaptAt = ToldPool.Sampled - TimeSpan.FromHours(1), LeaptBy = 0.35 } }),
        ("a bad lot of reagent", new() { PhTest = 7.7, ChlorineTest = null, PhTrust = trust => trust with { TestOff = new(0.29, 0.05) } }),
        ("a probe that drifts", new() { PhTest = 7.3, ChlorineTest = null, PhRead = 7.52, PhChecks = Standing.MaintenanceRequired, PhBias = 0.19, PhTrust = trust => trust with { Drift = new(0.005, 0.001) } }),
        ("a slow probe", new() { OrpRead = ToldPool.OrpAt(7.4, 1.5), PhSignal = Slow }),
    ];

    private static SignalHealth Slow => SignalHealth.New with
    {
        Standing = Standing.MaintenanceRequired, Reasons = [Reason.Of("signal.slow", 45)], Wander = SignalWander.New with { Pace = SignalPace.New with { SlowFor = 2, Response = new(45, 6) } },
    };

    [Fact]
    public void The_stories_read_as_they_were_last_agreed()
    {
        var text = string.Join("\n", Stories.Select(s => Write(s.Title, s.Pool.Tell())));
        if (Environment.GetEnvironmentVariable("PLANTWATCH_WRITE_GENERATED") == "true") File.WriteAllText(Golden, text);
        Assert.Equal(File.ReadAllText(Golden), text);
    }

    private static string Write(string title, TrustStory story)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"# {title}\n{story.Answer}, {story.Weight}, {story.Probability:0.00}, {Math.Round(story.Odds):0} : 1\n");
        foreach (var says in story.Says) text.Append(Say(says)).Append('\n');
        foreach (var sign in story.Signs) text.Append(CultureInfo.InvariantCulture, $"- {sign.Part} x {sign.Ratio:0.0}: {Say(sign.What)}\n");
        foreach (var range in story.Plausible) text.Append(CultureInfo.InvariantCulture, $"  {range.Measurand} {range.Low:0.00} to {range.High:0.00}\n");
        foreach (var step in story.Steps) text.Append(CultureInfo.InvariantCulture, $"> {step.Act}, {step.Minutes:0} min, {step.Settles:0.00} bit: {Say(step.What[0])}\n");
        return text.ToString();
    }

    // Enough of the edge's wording to read it; how figures look is the edge's own test.
    private static string Say(Reason reason) => Hole().Replace(Words[reason.Code], hole =>
    {
        var fact = reason.Facts[int.Parse(hole.Groups[1].Value, CultureInfo.InvariantCulture)];
        return fact.Number?.ToString("0.##", CultureInfo.InvariantCulture) ?? Words.GetValueOrDefault("name." + fact.Text, fact.Text!);
    });

    [GeneratedRegex(@"\{(\d)(?::[^}]+)?\}")]
    private static partial Regex Hole();
}
