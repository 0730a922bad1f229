using System.Globalization;
using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile;

/// <summary>A piece of a YAML file that remembers the line it stands on, so that every later complaint can name it.</summary>
internal abstract class PlantNode(int line)
{
    /// <summary>Line in the file, from 1.</summary>
    public int Line { get; } = line;

    /// <summary>Where it stands in the text.</summary>
    public Extent At { get; init; }

    /// <summary>The same content without lines.</summary>
    public abstract JsonNode? ToJson();

    /// <summary>What it is, for the words "found ...".</summary>
    public abstract string Describe();
}

/// <summary>One key with its value.</summary>
internal sealed record PlantEntry(string Key, int Line, PlantNode Value)
{
    /// <summary>Where the key stands in the text.</summary>
    public Extent KeyAt { get; init; }
}

/// <summary>Keys with values, in the order of the file.</summary>
internal sealed class PlantMapping(int line, IReadOnlyList<PlantEntry> entries) : PlantNode(line)
{
    public IReadOnlyList<PlantEntry> Entries { get; } = entries;

    public PlantEntry? Find(string key) => Entries.FirstOrDefault(entry => entry.Key == key);

    public override JsonNode ToJson()
    {
        var json = new JsonObject();
        foreach (var entry in Entries) json[entry.Key] = entry.Value.ToJson();
        return json;
    }

    public override string Describe() => Entries.Count == 0 ? "an empty group of keys" : $"a group of keys ({Text.Short(Entries[0].Key)} ...)";
}

/// <summary>A list.</summary>
internal sealed class PlantList(int line, IReadOnlyList<PlantNode> items) : PlantNode(line)
{
    public IReadOnlyList<PlantNode> Items { get; } = items;

    public override JsonNode ToJson() => new JsonArray([.. Items.Select(item => item.ToJson())]);

    public override string Describe() => Items.Count == 0 ? "an empty list" : Items.Count == 1 ? "a list of 1 item" : $"a list of {Items.Count} items";
}

/// <summary>A single value: text, a finite number, true or false, or nothing.</summary>
internal sealed class PlantScalar(int line, string text, object? value) : PlantNode(line)
{
    /// <summary>A string, a double, a bool or null.</summary>
    public object? Value { get; } = value;

    public override JsonNode? ToJson() => Value switch
    {
        string s => JsonValue.Create(s),
        double d => JsonValue.Create(d),
        bool b => JsonValue.Create(b),
        _ => null,
    };

    public override string Describe() => Value switch
    {
        null => "nothing",
        string s => $"'{Text.Short(s)}'",
        _ => Text.Short(text),
    };
}

/// <summary>Words for messages.</summary>
internal static class Text
{
    private const int Longest = 40;

    /// <summary>Cuts long text and makes control characters and halves of characters visible, so that a message stays one line.</summary>
    public static string Short(string text)
    {
        var cut = text.Length <= Longest ? text : string.Concat(text.AsSpan(0, Longest), "...");
        return cut.Any(Unfit) ? string.Concat(cut.Select(c => Unfit(c) ? $"\\u{(int)c:X4}" : c.ToString())) : cut;
    }

    /// <summary>A number as people write it.</summary>
    public static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>A sentence of somebody else's as the end of ours: one line, no final stop, small first letter.</summary>
    public static string Plain(string sentence)
    {
        var line = sentence.ReplaceLineEndings(" ").Trim().TrimEnd('.');
        return line.Length == 0 ? line : char.ToLowerInvariant(line[0]) + line[1..];
    }

    private static bool Unfit(char c) => char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029';
}
