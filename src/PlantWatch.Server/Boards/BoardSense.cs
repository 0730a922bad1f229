using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>What the schema of a board cannot say: a key beside a tile that does not heed it, and a night with one end.</summary>
internal static class BoardSense
{
    private static readonly TileKind[] OfProbes = [TileKind.Readout, TileKind.Strip, TileKind.Probes];

    private static readonly (string Key, TileKind[] Heeded)[] Keys =
    [
        ("of", [.. Enum.GetValues<TileKind>().Except([TileKind.Notes, TileKind.Clock])]),
        ("measurands", OfProbes),
        ("hours", [TileKind.Strip, TileKind.Notes]),
        ("limits", [TileKind.Strip, TileKind.Readout]),
        ("checks", [TileKind.Strip]),
        ("raw", [TileKind.Strip, TileKind.Readout]),
        ("ahead_hours", [TileKind.Due]),
        ("at_least", [TileKind.Alarms]),
        ("most", [TileKind.Alarms, TileKind.Jobs, TileKind.Notes]),
        ("about", [TileKind.Notes]),
    ];

    public static void Check(Place root, Complaints complaints)
    {
        foreach (var tile in root["tiles"].Items)
            if (EnumWords<TileKind>.Find(tile["show"].String) is { } kind) CheckKeys(tile, kind, complaints);
        var (from, until) = (root["wall"]["dark_from"], root["wall"]["dark_until"]);
        if (from.Exists != until.Exists)
            complaints.Add(from.Exists ? from : until, $"expected {(from.Exists ? "dark_until" : "dark_from")} beside it; a night has two ends");
    }

    private static void CheckKeys(Place tile, TileKind kind, Complaints complaints)
    {
        foreach (var (key, heeded) in Keys)
            if (tile[key].Exists && !heeded.Contains(kind))
                complaints.Add(tile[key], $"says nothing for {EnumWords<TileKind>.Word(kind)}; it belongs to {string.Join(", ", heeded.Select(EnumWords<TileKind>.Word))}");
    }
}
