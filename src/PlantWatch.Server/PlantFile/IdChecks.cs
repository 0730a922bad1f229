using PlantWatch.Core.Plans;

namespace PlantWatch.Server.PlantFile;

/// <summary>One id, one thing. Pools, probes, pumps, filters, reagents, circuits and channels share one set of ids, since alarms and records name their subject by id alone.</summary>
internal static class IdChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        var things = Things(root).ToList();
        Twins(things, complaints);
        Twins(root["products"].Items.Select(product => new Thing("product", product)), complaints);
        Twins(root["people"].Items.Select(person => new Thing("person", person)), complaints);
        foreach (var circuit in root["circuits"].Items) Twins(circuit["plant_round"]["items"].Items.Select(item => new Thing("item of the round", item)), complaints);
        foreach (var circuit in root["circuits"].Items) Twins(circuit["tasks"].Items.Select(task => new Thing("task", task)), complaints);
        Reserved(root, complaints);
        FormerIds(things, complaints);
    }

    private static IEnumerable<Thing> Things(Place root)
    {
        foreach (var circuit in root["circuits"].Items)
        {
            yield return new("circuit", circuit);
            foreach (var pool in circuit["pools"].Items) yield return new("pool", pool);
            foreach (var probe in circuit["probes"].Items) yield return new("probe", probe);
            foreach (var pump in circuit["pumps"].Items) yield return new("pump", pump);
            foreach (var filter in circuit["filters"].Items) yield return new("filter", filter);
        }
        foreach (var reagent in root["reagents"].Items) yield return new("reagent", reagent);
        foreach (var instrument in root["instruments"].Items) yield return new("instrument", instrument);

        foreach (var channel in root["telling"]["channels"].Items) yield return new("channel", channel);
    }

    private static void Twins(IEnumerable<Thing> things, Complaints complaints)
    {
        var first = new Dictionary<string, Thing>(StringComparer.Ordinal);
        foreach (var thing in things)
        {
            if (thing.Id is not { } id || first.TryAdd(id, thing)) continue;
            complaints.Add(thing.Place["id"],
                $"the id '{Text.Short(id)}' is taken by the {first[id].Kind} on line {first[id].Place["id"].Line}; every id names one thing");
        }
    }

    private static void Reserved(Place root, Complaints complaints)
    {
        foreach (var id in root["circuits"].Items.Select(circuit => circuit["id"]).Where(id => id.String == CircuitPlan.Nowhere.Id))
            complaints.Add(id, $"the id '{CircuitPlan.Nowhere.Id}' is kept for topics that no circuit claims; choose another");
    }

    private static void FormerIds(List<Thing> things, Complaints complaints)
    {
        var first = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var thing in things)
        {
            var was = thing.Place["was"];
            if (was.String is not { } former) continue;
            if (former == thing.Id) complaints.Add(was, $"was '{Text.Short(former)}' is the id it has now; name the id it had before, or leave the key out");
            else if (things.Any(other => other.Id == former)) complaints.Add(was, $"'{Text.Short(former)}' is still an id in this file; a former id must be free");
            else if (!first.TryAdd(former, was)) complaints.Add(was, $"'{Text.Short(former)}' is named as a former id twice; the first is on line {first[former].Line}");
        }
    }

    private sealed record Thing(string Kind, Place Place)
    {
        public string? Id => Place["id"].String;
    }
}
