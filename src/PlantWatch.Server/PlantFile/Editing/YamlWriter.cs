using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>Writes values as YAML: on one line, or as lines by indentation in the style of the file they go into.</summary>
/// <param name="step">Columns that keys within keys are further in.</param>
/// <param name="dash">Columns that the dashes of a list are further in than its key.</param>
internal sealed partial class YamlWriter(int step, int dash)
{
    private const int LongestInline = 80;
    private static readonly JsonSerializerOptions Quoted = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A value on one line.</summary>
    /// <param name="value">The value.</param>
    /// <param name="form">How the value before it was written: quotes stay as they were.</param>
    public static string Inline(JsonNode? value, NodeForm form = NodeForm.Plain) => value switch
    {
        JsonObject { Count: 0 } => "{}",
        JsonObject keys => $"{{ {string.Join(", ", keys.Select(k => $"{Key(k.Key)}: {Inline(k.Value)}"))} }}",
        JsonArray items => $"[{string.Join(", ", items.Select(i => Inline(i)))}]",
        JsonValue v when v.GetValueKind() == JsonValueKind.String => Words(v.GetValue<string>(), form),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number => v.GetValue<double>().ToString("R", CultureInfo.InvariantCulture),
        JsonValue v => v.ToJsonString(),
        null => "null",
        _ => throw new ArgumentOutOfRangeException(nameof(value)),
    };

    /// <summary>A key with its value as lines; the first without its indentation, the others with it.</summary>
    public IReadOnlyList<string> Entry(string key, JsonNode? value, int column)
    {
        // What the file begins with stands by lines, however short it is.
        if (IsOneLine(value) && (column > 0 || value is not JsonObject { Count: > 0 })) return [$"{Key(key)}: {Inline(value)}"];
        if (value is JsonObject keys) return [$"{Key(key)}:", .. Indented(column + step, Keys(keys, column + step))];
        var items = ((JsonArray)value!).SelectMany(item => Indented(column + dash, Item(item, column + dash, asLine: IsShort(item))));
        return [$"{Key(key)}:", .. items];
    }

    /// <summary>An item of a list with its dash, as lines; the first without its indentation.</summary>
    public IReadOnlyList<string> Item(JsonNode? item, int column, bool asLine)
    {
        if (asLine || item is not JsonObject { Count: > 0 } keys) return [$"- {Inline(item)}"];
        var lines = Keys(keys, column + 2);
        return [$"- {lines[0]}", .. Indented(column + 2, lines.Skip(1), already: true)];
    }

    private List<string> Keys(JsonObject keys, int column) =>
        [.. keys.SelectMany((k, i) => Entry(k.Key, k.Value, column).Select((line, n) => n == 0 && i > 0 ? Spaces(column) + line : line))];

    // The first line of a group has no indentation yet; the others have theirs.
    private static IEnumerable<string> Indented(int column, IEnumerable<string> lines, bool already = false) =>
        lines.Select((line, i) => i == 0 && !already ? Spaces(column) + line : line);

    private static bool IsOneLine(JsonNode? value) => value switch
    {
        JsonObject keys => keys.All(k => k.Value is not JsonObject) && keys.All(k => IsOneLine(k.Value)) && Inline(keys).Length <= LongestInline,
        JsonArray items => items.All(i => i is JsonValue or null),
        _ => true,
    };

    // What has one key only is most likely added to.
    private static bool IsShort(JsonNode? item) => IsOneLine(item) && item is not JsonObject { Count: < 2 };

    private static string Spaces(int count) => new(' ', count);

    private static string Key(string key) => SafeKey().IsMatch(key) ? key : JsonSerializer.Serialize(key, Quoted);

    private static string Words(string text, NodeForm form) => form switch
    {
        NodeForm.SingleQuoted when !text.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF') => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'",
        NodeForm.Plain when IsSafe(text) => text,
        _ => Escaped(text),
    };

    private static string Escaped(string text) =>
        JsonSerializer.Serialize(text, Quoted).Replace("\u0085", "\\u0085", StringComparison.Ordinal).Replace("\u2028", "\\u2028", StringComparison.Ordinal).Replace("\u2029", "\\u2029", StringComparison.Ordinal);

    // Narrower than YAML asks: what an older reader takes for a number, a time, a day or yes and no stands in quotes too.
    private static bool IsSafe(string text) => Safe().IsMatch(text) && !Ambiguous().IsMatch(text);

    [GeneratedRegex(@"^[A-Za-z_-][A-Za-z0-9_-]*\z")]
    private static partial Regex SafeKey();

    [GeneratedRegex(@"^[\p{L}][\p{L}\p{Nd} ._/()%+&'-]*(?<! )\z")]
    private static partial Regex Safe();

    [GeneratedRegex(@"^(y|yes|n|no|on|off|true|false|null|nan|inf)\z", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Ambiguous();
}
