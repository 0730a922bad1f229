using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.WhatIf;

/// <summary>The plant file in force with some limits changed, held against every check that a plant file is held against. Nothing is written.</summary>
internal static class ChangedPlan
{
    /// <summary>The plan, or what is wrong with the changes: the key is that of the change and its field, such as <c>changes[0].low</c>.</summary>
    /// <param name="yaml">The plant file in force.</param>
    /// <param name="packs">The limit packs that can be picked.</param>
    /// <param name="changes">The changes.</param>
    public static PlantFileResult Of(string yaml, PackShelf packs, IReadOnlyList<LimitChange> changes)
    {
        var complaints = new Complaints();
        if (YamlTree.Read(yaml, complaints) is not PlantMapping root || complaints.Any) return new(null, complaints.InOrder());
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        PlantNode changed = root;
        for (var i = 0; i < changes.Count; i++) changed = With(changed, changes[i], i, places);
        var result = PlantFileReader.Understand(changed, packs, complaints);
        return result.Plan is not null ? result : new(null, [.. result.Errors.Select(e => e with { Key = FieldOf(e.Key, places) })]);
    }

    private static PlantNode With(PlantNode root, LimitChange change, int index, Dictionary<string, int> places) =>
        Each(root, "circuits", (circuit, c) => Each(circuit, "pools", (pool, p) =>
            Place.Root(pool)["id"].String == change.Pool ? Limited((PlantMapping)pool, change, index, $"circuits[{c}].pools[{p}].limits", places) : pool));

    private static PlantMapping Limited(PlantMapping pool, LimitChange change, int index, string path, Dictionary<string, int> places)
    {
        PlantNode[] limits = [.. Place.Root(pool)["limits"].Items.Select(l => l.Node!)];
        var at = Array.FindIndex(limits, l => Place.Root(l)["measurand"].String == EnumWords<Core.Quantities.Measurand>.Word(change.Measurand));
        var line = YamlTree.Read(LimitLine.Of(change.Limit), new Complaints()) is PlantList { Items: [var limit] } ? limit : throw new InvalidOperationException("a limit that is no line of a plant file");
        if (at < 0) (at, limits) = (limits.Length, [.. limits, line]);
        else limits[at] = line;
        places[$"{path}[{at}]"] = index;
        return Put(pool, "limits", new PlantList(pool.Line, limits));
    }

    private static PlantNode Each(PlantNode node, string key, Func<PlantNode, int, PlantNode> change) =>
        node is PlantMapping mapping && mapping.Find(key)?.Value is PlantList list ? Put(mapping, key, new PlantList(list.Line, [.. list.Items.Select(change)])) : node;

    private static PlantMapping Put(PlantMapping mapping, string key, PlantNode value) => mapping.Find(key) is { } known
        ? new(mapping.Line, [.. mapping.Entries.Select(e => e == known ? e with { Value = value } : e)])
        : new(mapping.Line, [.. mapping.Entries, new PlantEntry(key, mapping.Line, value)]);

    private static string FieldOf(string key, Dictionary<string, int> places)
    {
        foreach (var (path, index) in places)
            if (key.StartsWith(path, StringComparison.Ordinal)) return $"changes[{index}]{Camel(key[path.Length..])}";
        return key;
    }

    private static string Camel(string key) => key.Length == 0 ? key : "." + System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(string.Concat(key[1..].Split('_').Select(w => char.ToUpperInvariant(w[0]) + w[1..])));
}
