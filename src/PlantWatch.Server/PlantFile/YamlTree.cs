using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace PlantWatch.Server.PlantFile;

/// <summary>Reads YAML into nodes with lines. Plain values follow the core schema of YAML 1.2, so that <c>on</c> and <c>07:00</c> stay text.</summary>
/// <remarks>
/// Works on parser events rather than on a deserializer: a duplicate key, an alias or a depth that could exhaust the stack is a complaint with a
/// line, not an exception. Anchors, aliases, tags and several documents have no use in such a file and are refused.
/// </remarks>
internal sealed partial class YamlTree
{
    private const int Deepest = 32;
    private readonly Parser _parser;
    private readonly Complaints _complaints;

    private YamlTree(string yaml, Complaints complaints)
    {
        _parser = new Parser(new StringReader(yaml));
        _complaints = complaints;
    }

    /// <summary>The root, or null when the text is no YAML at all; then there is a complaint.</summary>
    public static PlantNode? Read(string yaml, Complaints complaints)
    {
        try
        {
            return new YamlTree(yaml, complaints).Document();
        }
        catch (YamlException error)
        {
            complaints.Add(YamlWords.Explain(yaml, error));
            return null;
        }
    }

    private PlantNode? Document()
    {
        Next();
        if (Next() is StreamEnd)
        {
            _complaints.Add(1, "", "the file is empty");
            return null;
        }
        Next();
        var root = Node("", 0);
        Next();
        if (root is not null && Next() is DocumentStart second)
            _complaints.Add(LineOf(second), "", "a second document begins here; expected one, without lines of ---");
        return root;
    }

    /// <summary>The node that begins at the current event; null when the file is too deep to be read on.</summary>
    private PlantNode? Node(string path, int depth)
    {
        var current = _parser.Current!;
        if (depth > Deepest)
        {
            _complaints.Add(LineOf(current), path, $"nested more than {Deepest} deep; nothing in this file needs that");
            return null;
        }
        RefuseTag(current, path);
        return current switch
        {
            MappingStart start => Mapping(start, path, depth),
            SequenceStart start => List(start, path, depth),
            Scalar scalar => new PlantScalar(LineOf(scalar), scalar.Value, ValueOf(scalar)) { At = ExtentOf(scalar) },
            _ => Alias(current, path),
        };
    }

    private PlantMapping? Mapping(MappingStart start, string path, int depth)
    {
        var entries = new Dictionary<string, PlantEntry>(StringComparer.Ordinal);
        while (Next() is not MappingEnd)
        {
            var (line, keyAt) = (LineOf(_parser.Current!), ExtentOf(_parser.Current as Scalar));
            if (Key(path, depth) is not { } key) return null;
            Next();
            var place = Place.Join(path, key);
            if (Node(place, depth + 1) is not { } value) return null;
            if (!entries.TryAdd(key, new PlantEntry(key, line, value) { KeyAt = keyAt }))
                _complaints.Add(line, place, $"the key '{Text.Short(key)}' stands here twice; the first is on line {entries[key].Line}");
        }
        var at = ExtentOf(start, start.Style == MappingStyle.Flow, entries.Values.LastOrDefault()?.Value);
        return new PlantMapping(LineOf(start), [.. entries.Values]) { At = at };
    }

    private string? Key(string path, int depth)
    {
        if (_parser.Current is Scalar scalar) return scalar.Value;
        _complaints.Add(LineOf(_parser.Current!), path, "expected a key in plain text, found a list or a group of keys in its place");
        return Node(path, depth + 1) is null ? null : "?";
    }

    private PlantList? List(SequenceStart start, string path, int depth)
    {
        var items = new List<PlantNode>();
        while (Next() is not SequenceEnd)
        {
            if (Node($"{path}[{items.Count}]", depth + 1) is not { } item) return null;
            items.Add(item);
        }
        return new PlantList(LineOf(start), items) { At = ExtentOf(start, start.Style == SequenceStyle.Flow, items.LastOrDefault()) };
    }

    private PlantScalar Alias(ParsingEvent current, string path)
    {
        _complaints.Add(LineOf(current), path, "expected a value, found an alias (*name); write the value out");
        return new PlantScalar(LineOf(current), "", null);
    }

    private void RefuseTag(ParsingEvent current, string path)
    {
        if (current is NodeEvent { Tag.IsEmpty: false })
            _complaints.Add(LineOf(current), path, "expected a plain value, found a tag (!...); leave the tag out");
    }

    private ParsingEvent Next()
    {
        var before = _parser.Current;
        try
        {
            return _parser.MoveNext() ? _parser.Current! : throw new YamlException("the text ends too early");
        }
        catch (Exception error) when (error is not YamlException and not OutOfMemoryException)
        {
            // The parser lets through others than its own: an unclosed brace ends in an InvalidOperationException (YamlDotNet 18.1.0).
            throw new YamlException(before?.End ?? Mark.Empty, before?.End ?? Mark.Empty, error.Message, error);
        }
    }

    private static Extent ExtentOf(Scalar? scalar) => scalar is null ? default : new((int)scalar.Start.Index, (int)scalar.End.Index, FormOf(scalar.Style), !scalar.Anchor.IsEmpty);

    // A list by indentation ends with its last item: its own end is told only at the next token, behind comments that are not its own.
    private Extent ExtentOf(NodeEvent start, bool flow, PlantNode? last)
    {
        var from = (int)start.Start.Index;
        var to = flow ? (int)_parser.Current!.Start.Index + 1 : last?.At.End ?? from;
        return new(from, to, flow ? NodeForm.Flow : NodeForm.Block, !start.Anchor.IsEmpty);
    }

    private static NodeForm FormOf(ScalarStyle style) => style switch
    {
        ScalarStyle.SingleQuoted => NodeForm.SingleQuoted,
        ScalarStyle.DoubleQuoted => NodeForm.DoubleQuoted,
        ScalarStyle.Literal or ScalarStyle.Folded => NodeForm.Lines,
        _ => NodeForm.Plain,
    };

    private static int LineOf(ParsingEvent e) => Math.Max(1, (int)e.Start.Line);

    private static object? ValueOf(Scalar scalar) => scalar.Style is not ScalarStyle.Plain ? scalar.Value : scalar.Value switch
    {
        "" or "~" or "null" or "Null" or "NULL" => null,
        "true" or "True" or "TRUE" => true,
        "false" or "False" or "FALSE" => false,
        var text => NumberForm().IsMatch(text) && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number) ? number : text,
    };

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex NumberForm();
}
