using System.Text.RegularExpressions;

namespace PlantWatch.Server.Words;

/// <summary>One section of docs/rules.md: a rule as a person reads it. Every field is words; figures a machine goes by stand in the rule book, and a test holds the two together.</summary>
/// <param name="Number">Number, such as R-010.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Sentence">When it holds.</param>
/// <param name="Cause">What usually lies behind it.</param>
/// <param name="Consequence">What follows if nothing is done.</param>
/// <param name="Action">What to do.</param>
/// <param name="Respond">How long there is.</param>
/// <param name="OnDelay">How long the condition must hold.</param>
/// <param name="OffDelay">How long it must be gone.</param>
/// <param name="Deadband">How far the value must come back.</param>
/// <param name="Suppressed">What suppresses it by design.</param>
/// <param name="Clears">By what it clears, and whether it latches.</param>
/// <param name="Provenance">How it is known.</param>
internal sealed partial record RuleSheet(
    string Number, string Title, string Sentence, string Cause, string Consequence, string Action, string Respond,
    string OnDelay, string OffDelay, string Deadband, string Suppressed, string Clears, string Provenance)
{
    /// <summary>A section, from after its "## " to the next one.</summary>
    /// <exception cref="FormatException">It is not a rule as docs/rules.md writes them: the message names the section and what it lacks.</exception>
    public static RuleSheet Parse(string section)
    {
        ArgumentNullException.ThrowIfNull(section);
        var lines = section.ReplaceLineEndings("\n").Split('\n');
        if (Heading().Match(lines[0]) is not { Success: true } head) throw new FormatException($"'## {lines[0]}' is no heading of a rule: expected ## R-000 Title");
        var (number, title) = (head.Groups[1].Value, head.Groups[2].Value);
        if (lines.Skip(1).FirstOrDefault(l => l.Length > 0) is not { } sentence || sentence[0] == '|') throw new FormatException($"{number} has no sentence");
        var rows = Rows(number, lines);
        string Row(string name) => rows.GetValueOrDefault(name) is { Length: > 2 } text ? text : throw new FormatException($"{number} lacks its {name}");
        return new(
            number, title, sentence, Row("cause"), Row("consequence"), Row("what to do"), Row("time to respond"),
            Row("on-delay"), Row("off-delay"), Row("deadband"), Row("suppressed"), Row("clears"), Row("provenance"));
    }

    private static Dictionary<string, string> Rows(string number, string[] lines)
    {
        var rows = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var line in lines.Where(l => l.StartsWith("| ", StringComparison.Ordinal) && l != "| | |"))
        {
            if (Cells().Match(line) is not { Success: true } cells) throw new FormatException($"{number} has a row that is not two cells: {line}");
            if (!rows.TryAdd(cells.Groups[1].Value, cells.Groups[2].Value)) throw new FormatException($"{number} says its {cells.Groups[1].Value} twice");
        }

        return rows;
    }

    [GeneratedRegex(@"^(R-\d{3}) (.+)$")]
    private static partial Regex Heading();

    [GeneratedRegex(@"^\| ([^|]+) \| (.*) \|$")]
    private static partial Regex Cells();
}
