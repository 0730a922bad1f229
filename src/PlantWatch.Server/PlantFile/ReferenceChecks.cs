using PlantWatch.Server.LimitPacks;

namespace PlantWatch.Server.PlantFile;

/// <summary>What is named must exist, and in the same circuit: state is kept a circuit at a time.</summary>
internal static class ReferenceChecks
{
    public static void Check(Place root, PackShelf packs, Complaints complaints)
    {
        var products = Ids(root["products"]);
        if (root["limit_pack"].String is { } pack && packs.Find(pack) is null) Named(root["limit_pack"], "limit pack", packs.InOrder.Select(p => p.Id), complaints);
        foreach (var circuit in root["circuits"].Items)
        {
            foreach (var probe in circuit["probes"].Items)
            {
                Pool(root, circuit, probe["pool"], complaints);
                FlowSwitch(root, circuit, probe, complaints);
                Named(probe["filter"], "filter", Ids(circuit["filters"]), complaints);
            }
            foreach (var pump in circuit["pumps"].Items)
            {
                Pool(root, circuit, pump["pool"], complaints);
                Named(pump["product"], "product", products, complaints);
                Follows(root, circuit, pump["follows"], complaints);
            }
            foreach (var item in circuit["plant_round"]["items"].Items)
            {
                Named(item["of"], "filter or pool", Ids(circuit["filters"]).Concat(Ids(circuit["pools"])), complaints);
                if (item["low"].Number is { } low && item["high"].Number is { } high && low > high) complaints.Add(item["low"], "low is above high");
            }
            foreach (var task in circuit["tasks"].Items) Named(task["asset"], "pump, probe, filter, pool or circuit", Things(circuit), complaints);
        }
    }

    private static void Pool(Place root, Place circuit, Place pool, Complaints complaints)
    {
        if (InAnotherCircuit(root, circuit, "pools", pool.String) is { } other)
            complaints.Add(pool, $"pool '{Text.Short(pool.String!)}' belongs to circuit '{Text.Short(other)}'; expected a pool of this circuit");
        else Named(pool, "pool", Ids(circuit["pools"]), complaints);
    }

    private static void FlowSwitch(Place root, Place circuit, Place probe, Complaints complaints)
    {
        var flow = probe["flow_switch"];
        if (flow.String is not { } id) return;
        var target = circuit["probes"].Items.FirstOrDefault(other => other["id"].String == id);
        if (probe["measurand"].String == "sample_flow")
            complaints.Add(flow, "a flow switch guards probes; it has none of its own");
        else if (target.Exists && target["measurand"].String is { } measurand && measurand != "sample_flow")
            complaints.Add(flow, $"expected a probe with measurand sample_flow, found '{Text.Short(id)}', which measures {Text.Short(measurand)}");
        else if (InAnotherCircuit(root, circuit, "probes", id) is { } owner)
            complaints.Add(flow, $"probe '{Text.Short(id)}' belongs to circuit '{Text.Short(owner)}'; expected a flow switch of this circuit");
        else if (!target.Exists)
            Named(flow, "flow switch", circuit["probes"].Items.Where(other => other["measurand"].String == "sample_flow").Select(other => other["id"].String), complaints);
    }

    private static void Follows(Place root, Place circuit, Place follows, Complaints complaints)
    {
        if (InAnotherCircuit(root, circuit, "probes", follows.String) is { } owner)
            complaints.Add(follows, $"probe '{Text.Short(follows.String!)}' belongs to circuit '{Text.Short(owner)}'; expected a probe of this circuit");
        else Named(follows, "probe", Ids(circuit["probes"]), complaints);
    }

    /// <summary>Complains when nothing has the id that is named.</summary>
    public static void Named(Place reference, string kind, IEnumerable<string?> known, Complaints complaints)
    {
        var ids = known.OfType<string>().ToList();
        if (reference.String is not { } id || ids.Contains(id)) return;
        var hint = Spelling.DidYouMean(id, ids);
        if (hint.Length == 0) hint = ids.Count == 0 ? "; none is described" : $"; known: {Listed(ids)}";
        complaints.Add(reference, $"there is no {kind} '{Text.Short(id)}' here{hint}");
    }

    private static string? InAnotherCircuit(Place root, Place circuit, string list, string? id)
    {
        if (id is null || Ids(circuit[list]).Contains(id)) return null;
        var owner = root["circuits"].Items.FirstOrDefault(other => Ids(other[list]).Contains(id));
        return owner.Exists ? owner["id"].String ?? owner.Path : null;
    }

    private static string Listed(List<string> ids) => string.Join(", ", ids.Take(10)) + (ids.Count > 10 ? ", ..." : "");

    /// <summary>The ids of a list.</summary>
    public static IEnumerable<string?> Ids(Place list) => list.Items.Select(item => item["id"].String);

    private static IEnumerable<string?> Things(Place circuit) =>
        [circuit["id"].String, .. Ids(circuit["pools"]), .. Ids(circuit["probes"]), .. Ids(circuit["pumps"]), .. Ids(circuit["filters"])];
}
