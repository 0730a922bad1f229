using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Dosing;

/// <summary>Whether the person who asks may be given a dose. There are no roles yet: the shell grants to everybody, and whoever builds them decides here. The default grants nothing.</summary>
public enum Entitlement
{
    /// <summary>Not entitled, or not asked.</summary>
    No = 0,
    /// <summary>Entitled.</summary>
    Granted,
}

/// <summary>All that a dose is judged by.</summary>
public sealed record DoseSituation
{
    /// <summary>The circuit.</summary>
    public required CircuitPlan Circuit { get; init; }

    /// <summary>The pool whose water was tested.</summary>
    public required PoolPlan Pool { get; init; }

    /// <summary>Its newest tests.</summary>
    public required ImmutableSortedDictionary<Measurand, ManualValue> Tests { get; init; }

    /// <summary>Water temperature of a live probe in good standing; used where no fresh test of it is.</summary>
    public double? LiveTemperature { get; init; }

    /// <summary>Bathers at the last count; null when never counted.</summary>
    public int? Bathers { get; init; }

    /// <summary>What the person says now: true when no bather is in the water, false when some are, null when not said.</summary>
    public bool? BathersOut { get; init; }

    /// <summary>The person says that the pool is closed until a retest; otherwise it is taken for open.</summary>
    public bool Closed { get; init; }

    /// <summary>What the plan of an incident asks that is open in this water; null when none is.</summary>
    public IncidentHold? Hold { get; init; }

    /// <summary>Whether the person may be given a dose.</summary>
    public Entitlement Entitlement { get; init; }

    /// <summary>What always holds whatever the plant has set: pH.</summary>
    public required ValueRange PhStop { get; init; }

    /// <summary>What always holds: free chlorine.</summary>
    public required ValueRange ChlorineStop { get; init; }

    /// <summary>Other products at hand, for what must not meet what.</summary>
    public ImmutableArray<ProductPlan> Products { get; init; } = [];

    /// <summary>Now.</summary>
    public required Instant Now { get; init; }

    /// <summary>The newest test of a figure that is a number; null when there is none, or only a bound.</summary>
    public double? Tested(Measurand measurand) =>
        Tests.TryGetValue(measurand, out var value) && value.Result.Censoring == Censoring.None && !value.Suspect ? value.Result.Value : null;

    /// <summary>The limit in force on a figure; null without.</summary>
    public LimitPlan? Limit(Measurand measurand)
    {
        foreach (var limit in Pool.Limits)
            if (limit.Measurand == measurand) return limit;
        return null;
    }

    /// <summary>Combined chlorine of the newest free and total of one sample; null without.</summary>
    public double? Combined => Tests.TryGetValue(Measurand.TotalChlorine, out var total) && Tests.TryGetValue(Measurand.FreeChlorine, out var free)
        && total.CheckId == free.CheckId && total.Result.Censoring == Censoring.None && free.Result.Censoring == Censoring.None
        ? Math.Max(0, total.Result.Value - free.Result.Value) : null;
}
