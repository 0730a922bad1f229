namespace PlantWatch.Server.Paper.Render.Tables;

/// <summary>Names of worksheets: 31 characters at most, without the signs that a workbook forbids, each once whatever its case.</summary>
internal sealed class TabNames
{
    private const int Longest = 31;
    private readonly HashSet<string> _used = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>A name like the one wanted.</summary>
    public string Of(string wanted)
    {
        var clean = string.Concat(wanted.Select(c => c is '[' or ']' or ':' or '*' or '?' or '/' or '\\' or '\'' || char.IsControl(c) ? ' ' : c)).Trim();
        if (clean.Length == 0) clean = "-";
        var name = Cut(clean, Longest);
        for (var number = 2; !_used.Add(name); number++) name = Cut(clean, Longest - 4) + $" {number}";
        return name;
    }

    private static string Cut(string text, int length) => text.Length <= length ? text : text[..(char.IsHighSurrogate(text[length - 1]) ? length - 1 : length)].TrimEnd();
}
