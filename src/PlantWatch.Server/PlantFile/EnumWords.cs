using System.Text.Json;

namespace PlantWatch.Server.PlantFile;

/// <summary>The words of a plant file for an enumeration of Core: its names in small letters with underscores, without the one that means not stated.</summary>
internal static class EnumWords<T> where T : struct, Enum
{
    private static readonly Dictionary<string, T> Values = Enum.GetValues<T>()
        .Where(value => value.ToString() is not ("Unknown" or "None"))
        .ToDictionary(value => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString()), StringComparer.Ordinal);

    public static IEnumerable<string> All => Values.Keys;

    /// <summary>The word for a value.</summary>
    public static string Word(T value) => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    /// <summary>The value of a word; null for anything else.</summary>
    public static T? Find(string? word) => word is not null && Values.TryGetValue(word, out var value) ? value : null;
}
