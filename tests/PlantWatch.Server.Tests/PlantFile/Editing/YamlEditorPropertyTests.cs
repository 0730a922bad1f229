using System.Text.Json.Nodes;
using CsCheck;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.PlantFile.Editing;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.PlantFile.Editing;

/// <summary>Whatever is edited in whichever plant file: the content is what was meant, and the rest of the text is what it was.</summary>
public sealed class YamlEditorPropertyTests
{
    private static readonly YamlEditor Editor = new(SchemaShape.KeysAt);

    private const string Odd = """
        --- # a document that says where it begins
        # one step is four here, and lists stand below their key
        site:
            "name": 'Hall: the old one'   # quoted key
            time_zone: Europe/London
        products:
        - id: acid   # at the end of a line

          # between two keys
          name: >-
            Hydrochloric
            acid
          kind: hydrochloric_acid

        - { id: hypo, name: "Hypo \"12\"", kind: sodium_hypochlorite, strength_percent: 12 }
            # further in than anything
        circuits:

        - id: hall
          name: Hall
          pools:
          - id: main
            name: Main pool
            secondary: [ uv , ozone ]
            limits:
              # a list further in
              - { measurand: ph, low: 7.2, high: 7.6, source: test }

              - { measurand: orp, low: 670, source: test }
              # after the last
          probes:
          -
            id: ph
            range: [0, 14]
          pumps:
          nothing: # said to be nothing
          also: {}
        # the end
        """;

    private static readonly string[] Corpus =
    [
        File.ReadAllText(Folders.DemoPlant).ReplaceLineEndings("\n"), File.ReadAllText(Folders.DemoPlant).ReplaceLineEndings("\r\n"), WholeServer.Plant.ReplaceLineEndings("\n"), Odd.ReplaceLineEndings("\n"),
        Odd.ReplaceLineEndings("\r\n"), .. Samples(),
    ];

    private static readonly Gen<JsonNode> Scalar = Gen.OneOf<JsonNode>(
        Gen.OneOf(Gen.Const("plain"), Gen.Const("07:00"), Gen.Const("a: b # c"), Gen.Const("it's \"so\""), Gen.Const("on"), Gen.String[Gen.Char.AlphaNumeric, 1, 12]).Select(s => (JsonNode)s),
        Gen.Double[-1e6, 1e6].Select(d => (JsonNode)Math.Round(d, 3)), Gen.Bool.Select(b => (JsonNode)b));

    private static readonly Gen<JsonNode> Group = Gen.Select(Scalar, Scalar, Scalar, Gen.Bool, (a, b, c, deep) =>
        (JsonNode)new JsonObject { ["id"] = a.DeepClone(), ["name"] = b.DeepClone(), ["checks"] = deep ? new JsonArray(new JsonObject { ["at"] = new JsonArray(c.DeepClone()) }) : c.DeepClone() });

    private static readonly Gen<(string Text, int Pick, YamlDo Do, JsonNode Value, string Key)> Cases = Gen.Select(
        Gen.OneOf(Corpus), Gen.Int[0, int.MaxValue], Gen.OneOf(YamlDo.Set, YamlDo.Add, YamlDo.Remove), Gen.OneOf(Scalar, Scalar, Group), Gen.OneOf("was", "turnover_hours", "secondary", "x1"));

    [Fact]
    public void The_text_after_an_edit_reads_as_the_tree_after_the_edit() => Cases.Sample(c =>
    {
        var (edit, outcome) = Run(c);
        if (outcome.Fault != EditFault.None) return outcome.Text == c.Text;
        var meant = Tree(c.Text)!;
        Meant(meant, edit);
        return JsonNode.DeepEquals(Tree(outcome.Text), Same(meant));
    }, iter: 4000, threads: 2, print: Say);

    [Fact]
    public void Every_comment_that_does_not_stand_on_lines_taken_out_survives_in_order() => Cases.Where(c => !c.Value.ToJsonString().Contains('#', StringComparison.Ordinal)).Sample(c =>
    {
        var (edit, outcome) = Run(c);
        if (outcome.Fault != EditFault.None) return true;
        var (before, after) = (Comments(c.Text), Comments(outcome.Text));
        if (edit.Do != YamlDo.Remove) return before.SequenceEqual(after);
        var gone = Taken(c.Text, edit.Path);
        return Comments(c.Text, line => line < gone.First || line > gone.Last).SequenceEqual(after) || before.SequenceEqual(after);
    }, iter: 4000, threads: 2, print: Say);

    [Fact]
    public void Nothing_but_the_place_itself_changes() => Cases.Sample(c =>
    {
        var (edit, outcome) = Run(c);
        if (outcome.Fault != EditFault.None) return true;
        var (old, next) = (Lines(c.Text), Lines(outcome.Text));
        var head = old.Zip(next).TakeWhile(p => p.First == p.Second).Count();
        var tail = old.Skip(head).Reverse().Zip(next.Skip(head).Reverse()).TakeWhile(p => p.First == p.Second).Count();
        var (gone, come) = (old.Length - head - tail, next.Length - head - tail);
        // A value is a line; what comes makes no line go but one that it is written into; what goes leaves no line but one that says that nothing is left.
        return edit.Do switch
        {
            YamlDo.Set => gone <= 1,
            YamlDo.Add => gone <= 1,
            // From the key that is said to hold nothing now, over the comments below it, to the last line that goes.
            _ => come <= gone && gone <= (Taken(c.Text, edit.Path) is var t ? t.Last - t.First + 1 + 8 : 0),
        };
    }, iter: 4000, threads: 2, print: Say);

    [Fact]
    public void What_was_added_and_is_taken_out_again_leaves_no_trace() => Cases.Where(c => c.Do != YamlDo.Remove).Sample(c =>
    {
        var (edit, outcome) = Run(c);
        if (outcome.Fault != EditFault.None || Undo(Tree(c.Text)!, edit) is not { } undo) return true;
        var back = Editor.Apply(outcome.Text, [undo]);
        return back.Fault == EditFault.None && back.Text == c.Text;
    }, iter: 4000, threads: 2, print: Say);

    [Fact]
    public void A_value_and_its_former_one_again_leave_no_trace() => Cases.Where(c => c.Do == YamlDo.Set).Sample(c =>
    {
        if (Values(Tree(c.Text)!, "").ToArray() is not { Length: > 0 } values) return true;
        var (path, value) = values[c.Pick % values.Length];
        // Where quotes hold a text both ways, and the number is written as its shortest form.
        var there = Editor.Apply(c.Text, [new(YamlDo.Set, path, value is JsonValue v && v.TryGetValue<string>(out _) ? "other" : 12345)]);
        if (there.Fault != EditFault.None) return true;
        var back = Editor.Apply(there.Text, [new(YamlDo.Set, path, value!.DeepClone())]);
        return back.Fault == EditFault.None && (back.Text == c.Text || !IsShortest(c.Text, path));
    }, iter: 2000, threads: 2, print: Say);

    [Fact]
    public void A_file_by_the_book_is_edited_and_hardly_ever_refused()
    {
        var (done, all) = (0, 0);
        Cases.Where(c => c.Text == Corpus[0]).Sample(c =>
        {
            var outcome = Run(c).Outcome;
            Interlocked.Increment(ref all);
            if (outcome.Fault is EditFault.None or EditFault.BlockThere or EditFault.NotThere) Interlocked.Increment(ref done);
            return outcome.Fault != EditFault.NotSure && outcome.Fault != EditFault.NotReadable;
        }, iter: 1500, threads: 2, print: Say);
        Assert.True(done > 0.98 * all, $"{done} of {all}");
    }

    private static (YamlEdit Edit, EditOutcome Outcome) Run((string Text, int Pick, YamlDo Do, JsonNode Value, string Key) c)
    {
        var places = Places(Tree(c.Text)!, "").ToArray();
        var place = places[c.Pick % places.Length];
        var path = (c.Do, place.Node) switch
        {
            (YamlDo.Set, JsonObject o) when !o.ContainsKey(c.Key) => place.Path.Length == 0 ? c.Key : $"{place.Path}.{c.Key}",
            (YamlDo.Add, JsonObject o) when !o.ContainsKey(c.Key) => place.Path.Length == 0 ? c.Key : $"{place.Path}.{c.Key}",
            _ => place.Path.Length == 0 ? "site" : place.Path,
        };
        var edit = new YamlEdit(c.Do, path, c.Do == YamlDo.Remove ? null : c.Value.DeepClone());
        return (edit, Editor.Apply(c.Text, [edit]));
    }

    // A failure names the edit and shows what it did, and not the whole file.
    private static string Say((string Text, int Pick, YamlDo Do, JsonNode Value, string Key) c)
    {
        var (edit, outcome) = Run(c);
        var lines = string.Join('\n', LineDiff.Between(c.Text, outcome.Text).Select(l => $"{l.Fate} {l.Line}: {l.Text}"));
        return $"file {Array.IndexOf(Corpus, c.Text)}, {edit.Do} {edit.Path} = {edit.Value?.ToJsonString()} -> {outcome.Fault}\n{lines}";
    }

    private static IEnumerable<(string Path, JsonNode? Node)> Places(JsonNode? node, string path) => node switch
    {
        JsonObject o => o.SelectMany(p => Places(p.Value, path.Length == 0 ? p.Key : $"{path}.{p.Key}")).Prepend((path, o)),
        JsonArray a => a.SelectMany((n, i) => Places(n, $"{path}[{i}]")).Prepend((path, a)),
        _ => [(path, node)],
    };

    private static IEnumerable<(string Path, JsonNode? Node)> Values(JsonNode node, string path) => Places(node, path).Where(p => p.Node is JsonValue);

    // The meaning of an edit, written down once more and apart from the program.
    private static void Meant(JsonNode root, YamlEdit edit)
    {
        var cut = edit.Path.LastIndexOfAny(['.', '[']);
        var (holder, last) = cut < 0 ? (root, edit.Path) : (At(root, edit.Path[..cut]), edit.Path[(cut + 1)..].TrimEnd(']'));
        var value = edit.Value?.DeepClone();
        if (edit.Do == YamlDo.Add && At(root, edit.Path) is JsonArray list) list.Add(value);
        else if (edit.Do == YamlDo.Remove && holder is JsonArray from) from.RemoveAt(int.Parse(last));
        else if (edit.Do == YamlDo.Remove) holder!.AsObject().Remove(last);
        else if (holder is JsonArray of) of[int.Parse(last)] = edit.Do == YamlDo.Add ? new JsonArray(value) : value;
        else holder!.AsObject()[last] = edit.Do == YamlDo.Add ? new JsonArray(value) : value;
    }

    private static JsonNode? At(JsonNode? root, string path) =>
        path.Split('.', '[').Aggregate(root, (node, step) => node is JsonArray a ? a[int.Parse(step.TrimEnd(']'))] : (node as JsonObject)?[step]);

    private static JsonNode? Same(JsonNode node) => JsonEdits.Plain(node);

    private static YamlEdit? Undo(JsonNode before, YamlEdit edit) => (edit.Do, At(before, edit.Path)) switch
    {
        (YamlDo.Add, JsonArray list) => new(YamlDo.Remove, $"{edit.Path}[{list.Count}]"),
        (YamlDo.Set, null) when Holder(before, edit.Path) is JsonObject o && !o.ContainsKey(edit.Path.Split('.')[^1]) && o.Count > 0 => new(YamlDo.Remove, edit.Path),
        _ => null,
    };

    private static JsonNode? Holder(JsonNode root, string path) => path.LastIndexOfAny(['.', '[']) is var cut and > 0 ? At(root, path[..cut]) : root;

    private static JsonNode? Tree(string text) => YamlTree.Read(text, new Complaints())?.ToJson();

    private static string[] Lines(string text) => text.Split('\n');

    private static List<string> Comments(string text, Func<int, bool>? where = null) =>
        [.. Lines(text).Where((_, i) => where?.Invoke(i) ?? true).Select(Comment).OfType<string>()];

    // The corpus keeps " #" out of its quoted texts, so that what follows it is a comment.
    private static string? Comment(string line)
    {
        var at = line.TrimStart().StartsWith('#') ? line.IndexOf('#', StringComparison.Ordinal) : line.IndexOf(" #", StringComparison.Ordinal);
        return at < 0 ? null : line[at..].Trim();
    }

    private static (int First, int Last) Taken(string text, string path)
    {
        PlantNode? node = YamlTree.Read(text, new Complaints())!;
        var first = 0;
        foreach (var step in YamlPath.Steps(path)!)
        {
            if (node is PlantMapping m && m.Find((string)step) is { } entry) (node, first) = (entry.Value, entry.KeyAt.Start);
            else if (node is PlantList l) (node, first) = (l.Items[(int)step], l.Items[(int)step].At.Start);
        }

        return (LineOf(text, first) - (text[first..].Length > 0 && text[..first].TrimEnd().EndsWith('-') && !Lines(text)[LineOf(text, first)].Contains('-', StringComparison.Ordinal) ? 1 : 0), LineOf(text, Math.Max(first, new YamlText(text).ContentEnd(node!))));
    }

    private static int LineOf(string text, int at) => text.AsSpan(0, at).Count('\n');

    private static bool IsShortest(string text, string path)
    {
        PlantNode? node = YamlTree.Read(text, new Complaints())!;
        foreach (var step in YamlPath.Steps(path)!) node = step is string key ? ((PlantMapping)node!).Find(key)!.Value : ((PlantList)node!).Items[(int)step];
        return text[node!.At.Start..node.At.End] == YamlWriter.Inline(JsonEdits.Plain(node.ToJson()), node.At.Form);
    }

    private static IEnumerable<string> Samples() =>
        File.ReadAllText(Repository.PathOf("docs", "plant-file.md")).ReplaceLineEndings("\n").Split("```").Where((part, i) => i % 2 == 1 && part.StartsWith("yaml\nsite", StringComparison.Ordinal)).Select(part => part["yaml\n".Length..]);
}
