using YamlDotNet.Core;

namespace PlantWatch.Server.PlantFile;

/// <summary>Says in plain words why text is no YAML. The usual culprits are named, since a parser's own words speak of tokens and nodes.</summary>
internal static class YamlWords
{
    // What the parser says (YamlDotNet 18.1.0), and what it mostly means. Whatever is not here is told in the parser's own words.
    private static readonly (string Said, string Meant)[] Meanings =
    [
        ("invalid mapping", "a key is not expected here: is the line indented further than the one above, or does text with a colon lack its quotes?"),
        ("expected key", "expected a key with a colon and a space, indented like the keys it stands with"),
        ("wrong indentation", "a quote is opened here and not closed"),
        ("cannot start any token", "text that begins with @, %, ` or a tab must stand in quotes"),
        ("expected node content", "expected a value here"),
        ("unknown escape", "an unknown escape stands in double quotes here; single quotes take a backslash as it is"),
        ("surrogates", "expected whole characters, found half of one (\\uD800 to \\uDFFF)"),
    ];

    public static PlantFileError Explain(string yaml, YamlException error)
    {
        var line = Math.Max(1, (int)error.Start.Line);
        if (error.Message.Contains("tab", StringComparison.Ordinal) && FirstTabIn(yaml, line) is { } tab)
            return new(tab, "", "a tab indents this line; YAML wants spaces");
        if (error.InnerException is not null)
            return new(line, "", "a bracket [ or brace { is opened here and not closed");
        var meant = Meanings.FirstOrDefault(meaning => error.Message.Contains(meaning.Said, StringComparison.Ordinal)).Meant;
        return new(line, "", meant ?? $"not readable as YAML: {Text.Plain(error.Message)}");
    }

    /// <summary>The first line from a given one on that has a tab in its indentation.</summary>
    private static int? FirstTabIn(string yaml, int from)
    {
        using var reader = new StringReader(yaml);
        for (var at = 1; reader.ReadLine() is { } line; at++)
            if (at >= from && line.TakeWhile(char.IsWhiteSpace).Contains('\t')) return at;
        return null;
    }
}
