using System.Text.RegularExpressions;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>docs/rules.md as a table: number, title, sentence, and the rows of each rule by their first cell.</summary>
internal sealed partial record RulesPage(string Number, string Title, string Sentence, IReadOnlyDictionary<string, string> Rows)
{
    public static IReadOnlyList<RulesPage> Read() =>
        [.. File.ReadAllText(Source.PathOf("docs", "rules.md")).ReplaceLineEndings("\n").Split("\n## ")[1..].Select(One)];

    private static RulesPage One(string section)
    {
        var lines = section.Split('\n');
        var head = Heading().Match(lines[0]);
        Assert.True(head.Success, $"'## {lines[0]}' is no heading of a rule: expected ## R-000 Title");
        var rows = lines.Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Select(l => l.Trim('|', ' ').Split(" | ", 2)).Where(c => c.Length == 2).ToDictionary(c => c[0].Trim(), c => c[1].Trim());
        return new(head.Groups[1].Value, head.Groups[2].Value, lines.Skip(1).FirstOrDefault(l => l.Length > 0 && l[0] != '|') ?? "", rows);
    }

    [GeneratedRegex(@"^(R-\d{3}) (.+)$")]
    private static partial Regex Heading();
}
