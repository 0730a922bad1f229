using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Maintenance;

/// <summary>What a thing of the plant file is.</summary>
public enum PlantThing
{
    /// <summary>The plant file names nothing by that id.</summary>
    None = 0,
    /// <summary>The circuit itself: its pipes, strainers, circulation pumps.</summary>
    Circuit,
    /// <summary>A pool.</summary>
    Pool,
    /// <summary>A probe or flow switch.</summary>
    Probe,
    /// <summary>A dosing pump with its tank, tubes and injector.</summary>
    Pump,
    /// <summary>A filter.</summary>
    Filter,
}

/// <summary>The things of a circuit that work can be done on.</summary>
public static class PlantThings
{
    /// <summary>Ids of all the things of a circuit, itself first.</summary>
    public static IEnumerable<string> Things(this CircuitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [plan.Id, .. plan.Pools.Select(p => p.Id), .. plan.Probes.Select(p => p.Id), .. plan.Pumps.Select(p => p.Id), .. plan.Filters.Select(f => f.Id)];
    }

    /// <summary>What an id names in a circuit.</summary>
    public static PlantThing Find(this CircuitPlan plan, string? id)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (id is null) return PlantThing.None;
        if (plan.Pumps.Any(p => p.Id == id)) return PlantThing.Pump;
        if (plan.Probes.Any(p => p.Id == id)) return PlantThing.Probe;
        if (plan.Filters.Any(f => f.Id == id)) return PlantThing.Filter;
        if (plan.Pools.Any(p => p.Id == id)) return PlantThing.Pool;
        return plan.Id == id ? PlantThing.Circuit : PlantThing.None;
    }
}
