namespace PlantWatch.Server.Words;

/// <summary>Words of people in a table: what a spreadsheet would take for a formula is made text.</summary>
internal static class SafeText
{
    /// <summary>True for what begins as a formula does, also behind blanks.</summary>
    public static bool LooksLikeFormula(string text) => text.TrimStart() is { Length: > 0 } begins && begins[0] is '=' or '+' or '-' or '@' || text is ['\t' or '\r' or '\n', ..];

    /// <summary>The text behind an apostrophe where it looks like a formula.</summary>
    public static string Of(string text) => LooksLikeFormula(text) ? "'" + text : text;
}
