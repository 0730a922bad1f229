using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>Edits a YAML file in its text: what is not touched stays byte for byte, comments, order, quotes, blank lines and line ends included.</summary>
/// <remarks>What comes of an edit is read again and held against what was meant; where the two differ, nothing is done.</remarks>
/// <param name="order">Keys of the group at a path in the order in which they are usually written; nothing known is an empty list.</param>
internal sealed class YamlEditor(Func<IReadOnlyList<object>, IReadOnlyList<string>> order)
{
    /// <summary>The text after all edits, or the old text and why one of them cannot be done.</summary>
    public EditOutcome Apply(string text, IReadOnlyList<YamlEdit> edits)
    {
        var now = text;
        for (var i = 0; i < edits.Count; i++)
        {
            var (next, fault, line) = One(now, edits[i]);
            if (fault != EditFault.None) return new(text, fault, i, line);
            now = next;
        }

        return new(now);
    }

    private (string Text, EditFault Fault, int Line) One(string text, YamlEdit said)
    {
        if (said with { Value = JsonEdits.Plain(said.Value) } is var edit && !IsSayable(edit)) return (text, EditFault.NotSayable, 0);
        var complaints = new Complaints();
        if (YamlTree.Read(text, complaints) is not PlantMapping root || complaints.Any) return (text, EditFault.NotReadable, complaints.InOrder() is [var first, ..] ? first.Line : 1);
        if (JsonEdits.Apply(root.ToJson(), edit) is not { } meant) return (text, EditFault.NotThere, 0);
        var (changes, fault, at) = new YamlEditPlan(new YamlText(text), root, order).Of(edit);
        if (fault != EditFault.None) return (text, fault, new YamlText(text).LineNumber(at));
        var next = TextChange.Apply(text, changes);
        return Means(next, meant) ? (next, EditFault.None, 0) : (text, EditFault.NotSure, new YamlText(text).LineNumber(at));
    }

    private static bool Means(string text, JsonNode meant)
    {
        var complaints = new Complaints();
        return YamlTree.Read(text, complaints) is { } root && !complaints.Any && JsonNode.DeepEquals(root.ToJson(), meant);
    }

    private static bool IsSayable(YamlEdit edit) => edit.Do switch
    {
        YamlDo.Set or YamlDo.Add => edit.Value is not null && IsFinite(edit.Value),
        YamlDo.Remove => edit.Value is null,
        _ => false,
    };

    private static bool IsFinite(JsonNode? node) => node switch
    {
        JsonObject o => o.All(p => IsFinite(p.Value)),
        JsonArray a => a.All(IsFinite),
        JsonValue v when v.TryGetValue<double>(out var number) => double.IsFinite(number),
        null => false,
        _ => true,
    };
}
