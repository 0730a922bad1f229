namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>A YAML text as lines with their places.</summary>
internal sealed class YamlText(string text)
{
    public string Text { get; } = text;

    /// <summary>How its lines end; as the first one does.</summary>
    public string LineEnd { get; } = text.IndexOf('\n', StringComparison.Ordinal) is var at and > 0 && text[at - 1] == '\r' ? "\r\n" : "\n";

    /// <summary>Index of the first character of the line that a place is on.</summary>
    public int LineStart(int at) => at == 0 ? 0 : Text.LastIndexOf('\n', at - 1) + 1;

    /// <summary>Index behind the last character of the line that a place is on, before its line end.</summary>
    public int LineStop(int at)
    {
        var end = Text.IndexOf('\n', at);
        if (end < 0) return Text.Length;
        return end > at && Text[end - 1] == '\r' ? end - 1 : end;
    }

    /// <summary>Index of the first character of the next line; the length of the text after the last one.</summary>
    public int NextLine(int at) => Text.IndexOf('\n', at) is var end and >= 0 ? end + 1 : Text.Length;

    /// <summary>How many characters stand before a place on its line.</summary>
    public int Column(int at) => at - LineStart(at);

    /// <summary>The line of a place, from 1.</summary>
    public int LineNumber(int at) => 1 + Text.AsSpan(0, Math.Min(at, Text.Length)).Count('\n');

    public bool IsBlank(int lineStart) => lineStart < Text.Length && Text.AsSpan(lineStart, LineStop(lineStart) - lineStart).IsWhiteSpace();

    /// <summary>True for a line that is nothing but a comment, further in than a column.</summary>
    public bool IsCommentWithin(int lineStart, int column)
    {
        if (lineStart >= Text.Length) return false;
        var line = Text.AsSpan(lineStart, LineStop(lineStart) - lineStart);
        var indent = line.IndexOfAnyExcept(' ');
        return indent > column && line[indent] == '#';
    }

    /// <summary>True when only spaces stand before a place on its line.</summary>
    public bool IsFirstOnLine(int at) => Text.AsSpan(LineStart(at), at - LineStart(at)).IndexOfAnyExcept(' ') < 0;

    /// <summary>True when a tab stands before a place on its line.</summary>
    public bool HasTabBefore(int at) => Text.AsSpan(LineStart(at), at - LineStart(at)).Contains('\t');

    /// <summary>Index behind the last character of a node's own text: the empty lines after text over several lines are nobody's.</summary>
    public int ContentEnd(PlantNode node) => Last(node) is { At: { Form: NodeForm.Lines } at } ? at.Start + Text[at.Start..at.End].TrimEnd().Length : node.At.End;

    public bool IsOverLines(Extent at) => Text.AsSpan(at.Start, at.End - at.Start).Contains('\n');

    private static PlantNode Last(PlantNode node) => node switch
    {
        PlantMapping { At.Form: NodeForm.Block, Entries: [.., var last] } => Last(last.Value),
        PlantList { At.Form: NodeForm.Block, Items: [.., var last] } => Last(last),
        _ => node,
    };
}

/// <summary>Characters of a text that give way to others.</summary>
/// <param name="Start">Index of the first that goes.</param>
/// <param name="Length">How many go.</param>
/// <param name="Put">What comes in their place.</param>
internal readonly record struct TextChange(int Start, int Length, string Put)
{
    /// <summary>The text after changes that do not overlap; what is put at a place comes before what goes from there on.</summary>
    public static string Apply(string text, IEnumerable<TextChange> changes) =>
        changes.OrderByDescending(c => c.Start).ThenByDescending(c => c.Length).Aggregate(text, (now, c) => string.Concat(now.AsSpan(0, c.Start), c.Put, now.AsSpan(c.Start + c.Length)));
}
