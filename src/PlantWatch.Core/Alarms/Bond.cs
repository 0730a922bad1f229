using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms;

/// <summary>How the subject of a cause and that of its consequence hang together in the plant.</summary>
public enum Bond
{
    /// <summary>The same probe, pool, pump or test.</summary>
    Same = 0,
    /// <summary>A flow switch and a probe in its cell.</summary>
    InCell,
    /// <summary>A probe and a pump that doses by it.</summary>
    FollowedBy,
    /// <summary>A pump and a probe of what its product raises.</summary>
    Raises,
    /// <summary>A pump and a probe of what its product lowers.</summary>
    Lowers,
    /// <summary>A probe and the test by hand of the same value in its pool; ORP stands beside free chlorine.</summary>
    TestOf,
    /// <summary>A test by hand and a probe of the same value in its pool.</summary>
    TestedBy,
    /// <summary>A flow switch and the tests by hand of what the probes in its cell measure.</summary>
    CellTestOf,
    /// <summary>A pool and a probe or test in its water.</summary>
    InPool,
    /// <summary>Two things of one circuit: they share their water.</summary>
    InCircuit,
    /// <summary>The circulation, and a probe of what a pump of its circuit raises.</summary>
    RaisedByDosing,
    /// <summary>The circulation, and a probe of what a pump of its circuit lowers.</summary>
    LoweredByDosing,
    /// <summary>A test of pH and the balance of its pool.</summary>
    BalanceOf,
    /// <summary>A test of free or combined chlorine and the part that combined makes, of one pool.</summary>
    PartOf,
}

/// <summary>Looks bonds up in the plan.</summary>
public static class Bonds
{
    /// <summary>True when two subjects hang together in that way.</summary>
    public static bool Hold(CircuitPlan plan, Bond bond, string cause, string consequence)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return bond switch
        {
            Bond.Same => cause == consequence,
            Bond.InCell => Probe(plan, consequence)?.FlowSwitchId == cause,
            Bond.FollowedBy => Pump(plan, consequence) is { } pump && Followed(plan, pump)?.Id == cause,
            Bond.Raises => Pump(plan, cause) is { } pump && Moves(plan, pump, consequence, raises: true),
            Bond.Lowers => Pump(plan, cause) is { } pump && Moves(plan, pump, consequence, raises: false),
            Bond.TestOf => Probe(plan, cause) is { } probe && IsTestOf(probe, consequence),
            Bond.TestedBy => Probe(plan, consequence) is { } probe && IsTestOf(probe, cause),
            Bond.CellTestOf => plan.Probes.Any(p => p.FlowSwitchId == cause && IsTestOf(p, consequence)),
            Bond.InPool => PoolOf(plan, consequence) is { } pool ? pool == cause : Probe(plan, consequence) is not null,
            Bond.InCircuit => true,
            Bond.RaisedByDosing => Probe(plan, consequence) is { } probe && plan.Pumps.Any(p => SharesWater(p, probe) && Moves(p, probe.Measurand, raises: true)),
            Bond.LoweredByDosing => Probe(plan, consequence) is { } probe && plan.Pumps.Any(p => SharesWater(p, probe) && Moves(p, probe.Measurand, raises: false)),
            Bond.BalanceOf => cause == $"{consequence}/{Measurand.Ph.Key()}",
            Bond.PartOf => IsPartOf(cause, consequence),
            _ => false,
        };
    }

    private static bool Moves(CircuitPlan plan, PumpPlan pump, string probe, bool raises)
    {
        var aim = DosingAims.Of(pump.Doses);
        if (aim == DosingAim.LowersPh ? raises : !raises) return false;
        return aim is DosingAim.LowersPh or DosingAim.RaisesPh or DosingAim.AddsChlorine && Followed(plan, pump)?.Id == probe;
    }

    private static bool SharesWater(PumpPlan pump, ProbePlan probe) => pump.PoolId is null || probe.PoolId is null || pump.PoolId == probe.PoolId;

    private static bool Moves(PumpPlan pump, Measurand measurand, bool raises) => DosingAims.Of(pump.Doses) switch
    {
        DosingAim.AddsChlorine => raises && (measurand is Measurand.FreeChlorine or Measurand.Orp),
        DosingAim.RaisesPh => raises && measurand == Measurand.Ph,
        DosingAim.LowersPh => !raises && measurand == Measurand.Ph,
        _ => false,
    };

    private static bool IsPartOf(string test, string part)
    {
        var slash = test.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && test[(slash + 1)..] is var tested && (tested == Measurand.FreeChlorine.Key() || tested == Measurand.CombinedChlorine.Key())
            && part.StartsWith(test[..(slash + 1)], StringComparison.Ordinal);
    }

    // A probe in the common return sees every pool.
    private static bool IsTestOf(ProbePlan probe, string test)
    {
        var slash = test.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || (probe.PoolId is { } pool && pool != test[..slash])) return false;
        var tested = probe.Measurand == Measurand.Orp ? Measurand.FreeChlorine : probe.Measurand;
        return tested.Key() == test[(slash + 1)..];
    }

    private static ProbePlan? Followed(CircuitPlan plan, PumpPlan pump) => PumpFollows.Of(plan, pump) is >= 0 and var i ? plan.Probes[i] : null;

    private static string? PoolOf(CircuitPlan plan, string subject) =>
        subject.IndexOf('/', StringComparison.Ordinal) is > 0 and var slash ? subject[..slash] : Probe(plan, subject)?.PoolId;

    private static ProbePlan? Probe(CircuitPlan plan, string id)
    {
        foreach (var probe in plan.Probes)
            if (probe.Id == id) return probe;
        return null;
    }

    private static PumpPlan? Pump(CircuitPlan plan, string id)
    {
        foreach (var pump in plan.Pumps)
            if (pump.Id == id) return pump;
        return null;
    }
}
