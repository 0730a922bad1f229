using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>Holds what a board names against the plant. What is not there is a named problem on its tile: plants and boards change at different times.</summary>
internal static class BoardIds
{
    /// <summary>What is amiss with a tile, in words; empty when all it names is there.</summary>
    public static IReadOnlyList<string> Problems(BoardTile tile, PlantPlan? plan)
    {
        if (plan is null || tile.Of.IsEmpty) return [];
        string[] known = [.. Known(tile.Show, plan)];
        return [.. tile.Of.Where(id => !known.Contains(id)).Select(id => Missing(id, tile.Show, plan, known))];
    }

    /// <summary>The ids that a tile of a kind may name, in the order of the plant file.</summary>
    private static IEnumerable<string> Known(TileKind show, PlantPlan plan) => plan.Circuits.SelectMany(circuit => show switch
    {
        TileKind.Readout or TileKind.Strip or TileKind.Probes => circuit.Probes.Select(probe => probe.Id),
        TileKind.Pumps => circuit.Pumps.Select(pump => pump.Id),
        TileKind.Jobs => circuit.Probes.Select(probe => probe.Id).Concat(circuit.Pumps.Select(pump => pump.Id)),
        _ => circuit.Pools.Select(pool => pool.Id),
    });

    private static string Missing(string id, TileKind show, PlantPlan plan, string[] known)
    {
        var what = show switch
        {
            TileKind.Readout or TileKind.Strip or TileKind.Probes => "probe",
            TileKind.Pumps => "pump",
            TileKind.Jobs => "probe or pump",
            _ => "pool",
        };
        var hint = Spelling.DidYouMean(id, known);
        if (hint.Length == 0) hint = plan.Circuits.Any(c => c.Id == id) ? "; that is a circuit" : known.Length == 0 ? "; it has none" : $"; it has {string.Join(", ", known)}";
        return $"the plant file has no {what} '{Text.Short(id)}'{hint}";
    }
}
