namespace PlantWatch.Core.Chemistry;

/// <summary>The equilibrium as a plan asks it, with the number of times it was asked.</summary>
internal sealed class WaterModel(Speciation start)
{
    // mol/kg: small against a pool, large against the solver's own tolerance.
    private const double Nudge = 2e-6;

    /// <summary>The water at the start.</summary>
    public Speciation Start => start;

    /// <summary>How often the equilibrium was solved.</summary>
    public int Calls { get; private set; }

    /// <summary>The water of a composition; null when there is none.</summary>
    public Speciation? At(Composition c)
    {
        Calls++;
        var result = Equilibrium.After(start, c);
        return result.IsKnown && double.IsFinite(result.Value.Ph) ? result.Value : null;
    }

    /// <summary>The carbon in mol/kg with which a composition would have a pH; null when not even none would do.</summary>
    /// <remarks>At a fixed pH the charge of each weak acid is a fixed part of its amount, so that this carbon is all but a linear function of the amounts, where pH itself is anything but.</remarks>
    public double? CarbonAt(Composition c, double ph)
    {
        Calls++;
        var result = Equilibrium.Solve(
            c with { Carbon = 0 }, start.Tableau, start.Temperature, start.IsIdeal, new Condition(ConditionKind.HydrogenActivity, -Math.Log(10) * ph, FreeAmount.Carbon), ph, start);
        return result.IsKnown ? result.Value.Composition.Carbon : null;
    }

    /// <summary>Slope of a function along each amount of a composition; null where it has none.</summary>
    public static Composition? Slope(Func<Composition, double?> of, double here, Composition c)
    {
        double? Along(Composition unit) => (of(c + (Nudge * unit)) - here) / Nudge;
        return Along(new(Carbon: 1)) is { } carbon && Along(new(Calcium: 1)) is { } calcium && Along(new(Sodium: 1)) is { } sodium && Along(new(Chloride: 1)) is { } chloride
            && Along(new(Sulfate: 1)) is { } sulfate && Along(new(Cyanurate: 1)) is { } cyanurate && Along(new(Chlorine: 1)) is { } chlorine
            ? new(carbon, calcium, sodium, chloride, sulfate, cyanurate, chlorine)
            : null;
    }

    /// <summary>What a change of the amounts does along a slope.</summary>
    public static double Along(Composition slope, Composition change) =>
        (slope.Carbon * change.Carbon) + (slope.Calcium * change.Calcium) + (slope.Sodium * change.Sodium) + (slope.Chloride * change.Chloride) + (slope.Sulfate * change.Sulfate)
        + (slope.Cyanurate * change.Cyanurate) + (slope.Chlorine * change.Chlorine);
}
