using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>What of a manual check may count for a hold: only what a person tested, diluted where the method's range needs it, pH by meter. A probe's value is never asked.</summary>
public static class IncidentEvidence
{
    /// <summary>A cyanurate test older than this before the incident says too little of the water (common practice).</summary>
    public static TimeSpan CyanurateHolds { get; } = TimeSpan.FromDays(7);

    /// <summary>The check as a test of the hold; null when it tested nothing that a hold is about.</summary>
    /// <param name="check">The check.</param>
    /// <param name="doubted">Measurands doubted for what the check itself says. That chlorine is far from the last test is no doubt here: it was dosed.</param>
    public static HoldTest? Of(ManualCheck check, ImmutableArray<Measurand> doubted)
    {
        var (chlorine, ph, temperature) = (check.Result(Measurand.FreeChlorine), check.Result(Measurand.Ph), check.Result(Measurand.Temperature));
        if (chlorine is null && ph is null && temperature is null) return null;
        var lowest = check.Point == SamplePoint.Outlet;
        var why = ImmutableArray.CreateBuilder<Reason>();
        if (!lowest) why.Add(Reason.Of("incident.not_lowest_point"));
        var residual = Residual(chlorine, doubted, why);
        var acidity = Acidity(ph, doubted, lowest, why);
        double? celsius = temperature is { Censoring: Censoring.None } && !doubted.Contains(Measurand.Temperature) ? temperature.Value : null;
        if (celsius is null && lowest) why.Add(Reason.Of("incident.no_temperature"));
        return new(check.Id, check.SampledAt, lowest, Place(check), residual, acidity, celsius, why.DrainToImmutable());
    }

    /// <summary>The clock of an incident as it stands in one pool of the water: each is held and tested by itself.</summary>
    /// <param name="incident">The incident.</param>
    /// <param name="plan">The pool in the plant file.</param>
    /// <param name="pool">What is known of the pool: cyanurate by hand.</param>
    /// <param name="now">The time it is looked at.</param>
    public static HoldClock Clock(Incident incident, PoolPlan plan, PoolState pool, Instant now)
    {
        HoldTest[] tests = [.. incident.Tests.Where(t => (t.PoolId ?? incident.PoolId) == plan.Id)];
        var choice = Choice(incident, plan, pool);
        return choice.Figure is { } figure ? HoldClock.Of(figure, tests, now) : HoldClock.Refuse(choice.Refusal!, tests);
    }

    /// <summary>The row of the plan that a pool is held by as its cyanurate is known, or why there is none.</summary>
    public static HoldChoice Choice(Incident incident, PoolPlan plan, PoolState pool)
    {
        // Bromine is not free chlorine, and none of the tables is about it.
        if (plan.Disinfectant == Disinfectant.Bromine) return new(null, Reason.Of("incident.bromine"));
        var cyanurate = pool.Manual.GetValueOrDefault(Measurand.CyanuricAcid);
        return cyanurate is { Suspect: true } ? new(null, Reason.Of("incident.cyanurate_doubted")) : HoldChoice.Of(incident.Authority, incident.Kind, Most(cyanurate, incident.HappenedAt));
    }

    // Of "under 30" nobody knows whether it is none: the most that it may be. "Over" has no most.
    private static double? Most(ManualValue? cyanurate, Instant happenedAt) =>
        cyanurate is null || cyanurate.SampledAt < happenedAt - CyanurateHolds ? null
        : cyanurate.Result.Censoring == Censoring.Above ? Math.Max(cyanurate.Result.Value, Measurand.CyanuricAcid.Possible().High)
        : cyanurate.Result.Value;

    private static double? Residual(TestResult? chlorine, ImmutableArray<Measurand> doubted, ImmutableArray<Reason>.Builder why)
    {
        if (chlorine is null) why.Add(Reason.Of("incident.no_residual"));
        // Whatever the method: of a hand-held sensor nobody has told us that it reads higher than the dye.
        else if (MethodRange.InCell(chlorine) > Dpd.Range.High) why.Add(Reason.Of("incident.not_diluted", MethodRange.InCell(chlorine), Dpd.Range.High));
        else if (chlorine.Censoring == Censoring.Above) why.Add(Reason.Of("incident.not_diluted", chlorine.Value, Dpd.Range.High));
        else if (doubted.Contains(Measurand.FreeChlorine)) why.Add(Reason.Of("incident.residual_doubted"));
        // Of "under 5" nobody knows how far: it proves no residual at all.
        else return chlorine.Censoring == Censoring.Below ? 0 : chlorine.Value;
        return null;
    }

    private static double? Acidity(TestResult? ph, ImmutableArray<Measurand> doubted, bool lowest, ImmutableArray<Reason>.Builder why)
    {
        if (ph is { Method: TestMethod.Meter, Censoring: Censoring.None } && !doubted.Contains(Measurand.Ph)) return ph.Value;
        // Much chlorine turns phenol red purple: it reads falsely high then.
        if (ph is not null) why.Add(Reason.Of("incident.ph_not_by_meter"));
        else if (lowest) why.Add(Reason.Of("incident.no_ph_by_meter"));
        return null;
    }

    // A place nobody named is told from others by its kind alone.
    private static string Place(ManualCheck check) => string.IsNullOrWhiteSpace(check.Place) ? check.Point.ToString() : check.Place;
}
