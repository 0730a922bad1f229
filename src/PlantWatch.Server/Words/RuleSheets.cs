using System.Collections.Frozen;
using System.Collections.Immutable;

namespace PlantWatch.Server.Words;

/// <summary>docs/rules.md as this build carries it: the one source of what is said of a rule.</summary>
internal static class RuleSheets
{
    private const string Resource = "rules.md";

    /// <summary>All rules in the order of the page.</summary>
    /// <remarks>A page that cannot be read is a mistake of ours and stops the start.</remarks>
    public static ImmutableArray<RuleSheet> All { get; } = Read(Page());

    /// <summary>By number.</summary>
    public static FrozenDictionary<string, RuleSheet> ByNumber { get; } = All.ToFrozenDictionary(r => r.Number, StringComparer.Ordinal);

    /// <summary>The sentences of a rule that stand with every alarm, by code.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Sentences => All.SelectMany(r => new KeyValuePair<string, string>[]
    {
        new($"{r.Number}.title", r.Title), new($"{r.Number}.consequence", r.Consequence), new($"{r.Number}.action", r.Action), new($"{r.Number}.respond", r.Respond),
    });

    /// <summary>Reads a page: what stands before its first section is about all rules.</summary>
    /// <exception cref="FormatException">A section is no rule, or a number stands twice.</exception>
    public static ImmutableArray<RuleSheet> Read(string page)
    {
        ArgumentNullException.ThrowIfNull(page);
        ImmutableArray<RuleSheet> all = [.. page.ReplaceLineEndings("\n").Split("\n## ")[1..].Select(RuleSheet.Parse)];
        return all.GroupBy(r => r.Number).FirstOrDefault(g => g.Count() > 1) is { } twice ? throw new FormatException($"{twice.Key} has two sections") : all;
    }

    private static string Page()
    {
        using var stream = typeof(RuleSheets).Assembly.GetManifestResourceStream(Resource) ?? throw new InvalidOperationException($"{Resource} is missing from this build");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
