using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>Finds which characters of a text an edit changes.</summary>
internal sealed partial class YamlEditPlan(YamlText text, PlantMapping root, Func<IReadOnlyList<object>, IReadOnlyList<string>> order)
{
    private readonly YamlWriter _writer = new(YamlStyle.Step(text, root), YamlStyle.Dash(text, root));

    /// <summary>The changes, or why there are none and where.</summary>
    public (IReadOnlyList<TextChange> Changes, EditFault Fault, int At) Of(YamlEdit edit)
    {
        var steps = YamlPath.Steps(edit.Path)!;
        try
        {
            return (edit.Do switch
            {
                YamlDo.Set => Set(steps, edit.Value!),
                YamlDo.Add => Add(steps, edit.Value!),
                _ => Remove(steps),
            }, EditFault.None, 0);
        }
        catch (CannotEditException no)
        {
            return ([], no.Fault, no.At);
        }
    }

    private IReadOnlyList<TextChange> Set(IReadOnlyList<object> steps, JsonNode value)
    {
        var holder = Find(steps.SkipLast(1));
        return Child(holder, steps[^1]) is { } node ? Replace(holder, node, value) : AddKey((PlantMapping)holder, [.. steps.SkipLast(1)], (string)steps[^1], value);
    }

    private IReadOnlyList<TextChange> Replace(PlantNode holder, PlantNode old, JsonNode value)
    {
        if (JsonNode.DeepEquals(old.ToJson(), value)) return [];
        if (old.At.Anchored) throw new CannotEditException(EditFault.Anchor, old.At.Start);
        if (old.At.Form == NodeForm.Lines) throw new CannotEditException(EditFault.TextOverLines, old.At.Start);
        if (old.At.Form == NodeForm.Block) throw new CannotEditException(EditFault.BlockThere, old.At.Start);
        if (old.At.Form == NodeForm.Flow && text.IsOverLines(old.At)) throw new CannotEditException(EditFault.FlowOverLines, old.At.Start);
        if (IsNothing(old) && holder.At.Form == NodeForm.Block && value is JsonArray { Count: > 0 } or JsonObject && Entry(holder, old) is { } entry) return Unfold(holder, entry, value);
        var put = YamlWriter.Inline(value, old.At.Form);
        return [new(old.At.Start, old.At.End - old.At.Start, old.At.Start == old.At.End && !char.IsWhiteSpace(text.Text[old.At.Start - 1]) ? " " + put : put)];
    }

    // "circuits: []" becomes a list by indentation under its key.
    private IReadOnlyList<TextChange> Unfold(PlantNode holder, PlantEntry entry, JsonNode value)
    {
        var column = ColumnOf(holder);
        if (_writer.Entry(entry.Key, value, column) is not { Count: > 1 } lines) return [Filled(entry.Value.At, YamlWriter.Inline(value))];
        var from = text.Text.AsSpan(0, entry.Value.At.Start).TrimEnd(' ').Length;
        var stop = text.LineStop(entry.Value.At.End);
        var rest = text.Text[entry.Value.At.End..stop];
        if (rest.Trim() is { Length: > 0 } after && after[0] != '#') throw new CannotEditException(EditFault.NotSure, from);
        return [new(from, stop - from, rest.TrimEnd() + Lines(lines.Skip(1)))];
    }

    private TextChange Filled(Extent at, string put) => new(at.Start, at.End - at.Start, at.Start == at.End && !char.IsWhiteSpace(text.Text[at.Start - 1]) ? " " + put : put);

    private IReadOnlyList<TextChange> AddKey(PlantMapping holder, IReadOnlyList<object> path, string key, JsonNode value)
    {
        if (holder.Entries.Count == 0 && path is [.., string own] && Find(path.SkipLast(1)) is PlantMapping { At.Form: NodeForm.Block } above) return Unfold(above, above.Find(own)!, new JsonObject { [key] = value.DeepClone() });
        if (holder.At.Form == NodeForm.Flow) return InFlow(holder, holder.Entries is [.., var last] ? EndOf(last) : null, YamlWriter.Inline(new JsonObject { [key] = value.DeepClone() })[2..^2], "{ ", " }");
        var usual = order(path);
        var place = usual.TakeWhile(k => k != key).ToHashSet(StringComparer.Ordinal);
        var before = (usual.Contains(key, StringComparer.Ordinal) ? holder.Entries.LastOrDefault(e => place.Contains(e.Key)) : null) ?? holder.Entries[^1];
        var column = ColumnOf(holder);
        var lines = _writer.Entry(key, value, column);
        return [Below(EndOf(before), column, [Indent(column) + lines[0], .. lines.Skip(1)], blank: path.Count == 0 && text.IsBlank(text.NextLine(EndOf(before))))];
    }

    private IReadOnlyList<TextChange> Add(IReadOnlyList<object> steps, JsonNode item)
    {
        var holder = Find(steps.SkipLast(1));
        var node = Child(holder, steps[^1]);
        if (node is null || IsNothing(node)) return Set(steps, new JsonArray(item.DeepClone()));
        if (node is not PlantList list) throw new CannotEditException(EditFault.NotThere, node.At.Start);
        if (list.At.Form == NodeForm.Flow) return InFlow(list, list.Items is [.., var end] ? end.At.End : null, YamlWriter.Inline(item), "[", "]");
        var last = list.Items[^1];
        var column = ColumnOf(list);
        var lines = _writer.Item(item, column, asLine: last.At.Form == NodeForm.Flow && !text.IsOverLines(last.At));
        var apart = list.Items.Count > 1 && text.IsBlank(text.NextLine(text.ContentEnd(list.Items[^2])));
        return [Below(text.ContentEnd(last), column, [Indent(column) + lines[0], .. lines.Skip(1)], apart)];
    }

    private IReadOnlyList<TextChange> InFlow(PlantNode holder, int? after, string put, string open, string close)
    {
        if (text.IsOverLines(holder.At)) throw new CannotEditException(EditFault.FlowOverLines, holder.At.Start);
        return after is { } at ? [new(at, 0, ", " + put)] : [new(holder.At.Start, holder.At.End - holder.At.Start, open + put + close)];
    }

    // Comments further in belong to what stands above them.
    private TextChange Below(int end, int column, IReadOnlyList<string> lines, bool blank)
    {
        var stop = text.LineStop(end);
        for (var next = text.NextLine(end); text.IsCommentWithin(next, column); next = text.NextLine(next)) stop = text.LineStop(next);
        return new(stop, 0, (blank ? text.LineEnd : "") + Lines(lines));
    }

    private string Lines(IEnumerable<string> lines) => string.Concat(lines.Select(line => text.LineEnd + line));

    private static string Indent(int column) => new(' ', column);

    private int ColumnOf(PlantNode node) => node.At.Anchored ? throw new CannotEditException(EditFault.Anchor, node.At.Start)
        : text.HasTabBefore(node.At.Start) ? throw new CannotEditException(EditFault.Tab, node.At.Start)
        : text.Column(node.At.Start);

    private int EndOf(PlantEntry entry) => text.ContentEnd(entry.Value);

    private static bool IsNothing(PlantNode node) => node is PlantScalar { Value: null } or PlantList { Items.Count: 0 } or PlantMapping { Entries.Count: 0 };

    private static PlantEntry? Entry(PlantNode holder, PlantNode value) => (holder as PlantMapping)?.Entries.FirstOrDefault(e => e.Value == value);

    private PlantNode Find(IEnumerable<object> steps) => steps.Aggregate((PlantNode)root, (node, step) => Child(node, step) ?? throw new CannotEditException(EditFault.NotThere, node.At.Start));

    private static PlantNode? Child(PlantNode node, object step) => (node, step) switch
    {
        (PlantMapping mapping, string key) => mapping.Find(key)?.Value,
        (PlantList list, int index) => list.Items.ElementAtOrDefault(index),
        _ => null,
    };
}

/// <summary>Said within the planning of an edit, and caught where it began.</summary>
internal sealed class CannotEditException(EditFault fault, int at) : Exception
{
    public EditFault Fault { get; } = fault;

    public int At { get; } = at;
}
