namespace PlantWatch.Server.PlantFile;

/// <summary>A place in the plant file that may or may not be there or be of the right shape. Reading it never fails: what is amiss reads as null.</summary>
/// <param name="Node">What stands there; null when nothing does.</param>
/// <param name="Path">Path of the key, such as <c>circuits[0].pools[1].volume_m3</c>.</param>
/// <param name="Line">Line of the key, or of what should hold it.</param>
internal readonly record struct Place(PlantNode? Node, string Path, int Line)
{
    public static Place Root(PlantNode root) => new(root, "", root.Line);

    public Place this[string key] => Node is PlantMapping mapping && mapping.Find(key) is { } entry
        ? new(entry.Value, Join(Path, key), entry.Line)
        : new(null, Join(Path, key), Line);

    public bool Exists => Node is not null;

    public string? String => (Node as PlantScalar)?.Value as string;

    public double? Number => (Node as PlantScalar)?.Value as double?;

    public bool? Boolean => (Node as PlantScalar)?.Value as bool?;

    public IEnumerable<Place> Items
    {
        get
        {
            if (Node is not PlantList list) yield break;
            for (var i = 0; i < list.Items.Count; i++) yield return new(list.Items[i], $"{Path}[{i}]", list.Items[i].Line);
        }
    }

    public static string Join(string path, string key) => path.Length == 0 ? Text.Short(key) : $"{path}.{Text.Short(key)}";
}
