using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The words of sheets, which all stand under <c>paper.</c>.</summary>
internal static class PaperWords
{
    /// <summary>A word or a sentence.</summary>
    public static string Paper(this Wording words, string key) => words.Find($"paper.{key}");

    /// <summary>A sentence with its figures and names.</summary>
    public static string Paper(this Wording words, string key, params Fact[] facts) => words.Text(new Reason($"paper.{key}", [.. facts]));

    /// <summary>The word of a value of a closed list.</summary>
    public static string PaperWord<T>(this Wording words, string list, T value) where T : struct, Enum => words.Find($"paper.{list}_{Wording.Key(value)}");

    /// <summary>A quantity with a capital, as it heads a column.</summary>
    public static string Heading(this Wording words, Measurand measurand) => Capital(words.Find($"name.{measurand.Key()}"));

    /// <summary>With a capital, unless it is a sign such as pH.</summary>
    public static string Capital(string text) => text.Length > 1 && char.IsUpper(text[1]) ? text : text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What there is of some parts, parted by commas.</summary>
    public static string And(params ReadOnlySpan<string?> parts) => Joined(", ", parts);

    /// <summary>What there is of some parts, parted by something.</summary>
    public static string Joined(string by, params ReadOnlySpan<string?> parts)
    {
        var said = "";
        foreach (var part in parts)
            if (!string.IsNullOrWhiteSpace(part)) said = said.Length == 0 ? part.Trim() : said + by + part.Trim();
        return said;
    }
}
