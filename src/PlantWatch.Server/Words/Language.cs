using System.Collections.Immutable;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace PlantWatch.Server.Words;

/// <summary>A language that sentences are written in, and how figures are written in it.</summary>
/// <param name="Code">Code of the language (BCP 47, two letters); the name of its folder in Words.</param>
/// <param name="Decimal">What stands between whole and tenths.</param>
/// <param name="Thousands">What sets thousands apart.</param>
internal sealed record Language(string Code, string Decimal, string Thousands)
{
    /// <summary>English: what is said where no other language is asked for.</summary>
    public static Language English { get; } = new("en", ".", ",");

    /// <summary>Every language that this build has words of.</summary>
    public static ImmutableArray<Language> All { get; } = [.. new[] { English, new("de", ",", "."), new("fr", ",", "\u202f"), new("es", ",", ".") }.Where(HasWords)];

    /// <summary>The language of a code such as de or de-CH; null where this build has no words of it.</summary>
    public static Language? Find(string? tag)
    {
        var code = tag?.Split('-')[0] ?? "";
        return All.FirstOrDefault(language => string.Equals(language.Code, code, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The best of those that a request asks for (RFC 9110, section 12.5.4); English where it asks for none of ours.</summary>
    public static Language Asked(StringValues acceptLanguage) =>
        StringWithQualityHeaderValue.TryParseList([.. acceptLanguage.OfType<string>()], out var asked)
            ? asked.Where(a => a.Quality != 0).OrderByDescending(a => a.Quality ?? 1).Select(a => Find(a.Value.Value)).OfType<Language>().FirstOrDefault() ?? English
            : English;

    /// <summary>A figure that was written with a point, and perhaps with commas between thousands, as this language writes it.</summary>
    public string Write(string figure) =>
        this == English ? figure : string.Concat(figure.Select(sign => sign switch { '.' => Decimal, ',' => Thousands, _ => sign.ToString() }));

    private static bool HasWords(Language language) =>
        typeof(Language).Assembly.GetManifestResourceNames().Any(name => name.StartsWith($"Words.{language.Code}.", StringComparison.Ordinal));
}
