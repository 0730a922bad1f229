using System.Collections.Frozen;
using System.Collections.Immutable;

namespace PlantWatch.Server.Words;

/// <summary>docs/rules.md as this build carries it: the one source of what is said of a rule.</summary>
internal static class RuleSheets
{
    private static readonly FrozenDictionary<string, FrozenDictionary<string, RuleSheet>> Pages =
        Language.All.ToFrozenDictionary(l => l.Code, Sheets, StringComparer.Ordinal);

    /// <summary>All rules in the order of the page, in English.</summary>
    /// <remarks>A page that cannot be read is a mistake of ours and stops the start.</remarks>
    public static ImmutableArray<RuleSheet> All { get; } = Read(Page(Language.English)!);

    /// <summary>By number, in a language; in English what its page does not have.</summary>
    public static FrozenDictionary<string, RuleSheet> By(Language language) => Pages[language.Code];

    /// <summary>The sentences of a rule that stand with every alarm, by code.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Sentences(Language language) => By(language).Values.SelectMany(r => new KeyValuePair<string, string>[]
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

    private static FrozenDictionary<string, RuleSheet> Sheets(Language language) =>
        new[] { Language.English, language }.SelectMany(l => Page(l) is { } page ? Read(page) : []).GroupBy(r => r.Number).ToFrozenDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);

    private static string? Page(Language language)
    {
        using var stream = typeof(RuleSheets).Assembly.GetManifestResourceStream(language == Language.English ? "rules.md" : $"rules.{language.Code}.md");
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
