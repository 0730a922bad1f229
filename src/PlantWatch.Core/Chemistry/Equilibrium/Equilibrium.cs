using PlantWatch.Core.Quantities;
using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>The one equilibrium of pool water: carbonate, calcium, cyanurate, hypochlorite, borate, sulfate and water itself, at a temperature and an ionic strength.</summary>
/// <remarks>
/// Balance, carbonate precipitation, doses and hypochlorous acid all stand on it. Held to 200 waters and 96 doses computed with USGS PHREEQC 3.8.9 (phreeqc.dat): saturation index within 0.001.
/// Between databases the index differs by 0.03 (one standard deviation): that is what the model itself may claim.
/// </remarks>
public static class Equilibrium
{
    private static readonly int Bicarbonate = SpeciesTable.IndexOf("HCO3-");

    /// <summary>Water temperatures the model is used for, in degC.</summary>
    public static ValueRange ValidCelsius { get; } = new(0, 50);

    /// <summary>pH of a measured water the model is used for.</summary>
    public static ValueRange ValidPh { get; } = new(4.5, 10.5);

    /// <summary>Dissolved solids up to which the activity model is used, in mg/L: an ionic strength of about 0.5.</summary>
    public const double MostSolids = 28_000;

    /// <summary>Standard uncertainty of the saturation index by the model itself: between two databases it differs by -0.045 to +0.067 on 200 waters (computed).</summary>
    public const double ModelUncertainty = 0.03;

    /// <summary>Works a measured water out: how much carbon it holds, and every species.</summary>
    /// <param name="water">The water.</param>
    /// <param name="ideal">True for zero ionic strength, as published constants of cyanurate are meant.</param>
    public static EquilibriumResult Speciate(Water water, bool ideal = false)
    {
        ArgumentNullException.ThrowIfNull(water);
        if (!ValidPh.Contains(water.Ph.Value)) return EquilibriumResult.Failed(EquilibriumFailure.PhOutsideRange);
        if (!ValidCelsius.Contains(water.Temperature.Degrees)) return EquilibriumResult.Failed(EquilibriumFailure.TemperatureOutsideRange);
        if (water.Solids.MilligramsPerLitre > MostSolids) return EquilibriumResult.Failed(EquilibriumFailure.TooSalty);
        var measured = new Condition(ConditionKind.HydrogenActivity, -Math.Log(10) * water.Ph.Value, FreeAmount.Carbon);
        return Solve(WaterRecipe.WithoutCarbon(water), Tableau.At(water.Temperature.Degrees, ideal), water.Temperature.Degrees, ideal, measured, water.Ph.Value, null);
    }

    /// <summary>The equilibrium of a composition: its pH, and every species.</summary>
    /// <param name="composition">What the water is made of.</param>
    /// <param name="temperature">Its temperature.</param>
    public static EquilibriumResult At(Composition composition, Celsius temperature) =>
        ValidCelsius.Contains(temperature.Degrees)
            ? Solve(composition, Tableau.At(temperature.Degrees, ideal: false), temperature.Degrees, false, default, 7.5, null)
            : EquilibriumResult.Failed(EquilibriumFailure.TemperatureOutsideRange);

    /// <summary>The same water changed: the answer of a speciated water to a dose, faster than from the start.</summary>
    /// <param name="before">The water before.</param>
    /// <param name="composition">What it is made of now.</param>
    public static EquilibriumResult After(Speciation before, Composition composition)
    {
        ArgumentNullException.ThrowIfNull(before);
        return Solve(composition, before.Tableau, before.Temperature, before.IsIdeal, default, before.Ph, before);
    }

    internal static EquilibriumResult Solve(
        Composition composition, Tableau tableau, double celsius, bool ideal, Condition condition, double ph, Speciation? near)
    {
        if (!IsWater(composition)) return EquilibriumResult.Failed(EquilibriumFailure.NegativeAmount);
        Span<double> totals = stackalloc double[Tableau.Components];
        Totals(composition, totals);
        double[] ln = new double[Tableau.Components], molality = new double[Tableau.Species];
        // One of the two ways of shortening steps has found every water so far; which one is faster cannot be known before.
        if (!Solve(composition, tableau, condition, ph, near, Stride.Together, totals, ln, molality, out var found)
            && !Solve(composition, tableau, condition, ph, near, Stride.Apart, totals, ln, molality, out found))
            return EquilibriumResult.Failed(CarbonVanished(condition, molality) ? EquilibriumFailure.NegativeCarbon : EquilibriumFailure.NoAnswer);
        composition = Freed(composition, condition, found.Freed);
        if (composition.Carbon < 0 || composition.Calcium < 0) return EquilibriumResult.Failed(EquilibriumFailure.NegativeCarbon);
        return EquilibriumResult.Of(new(composition, celsius, ideal, tableau, found.IonicStrength, ln, molality));
    }

    private static bool Solve(
        Composition composition, Tableau tableau, Condition condition, double ph, Speciation? near, Stride stride, ReadOnlySpan<double> totals, double[] ln, double[] molality,
        out (double Freed, double IonicStrength) found)
    {
        FirstGuess.Make(composition, tableau, ph, ln, molality);
        // Near a known water most of the way is done; what is new in it starts from the guess.
        if (near is not null)
        {
            near.Molality.CopyTo(molality);
            for (var c = 0; c < ln.Length; c++)
                if (near.Molality[c] > 0) ln[c] = near.LnActivity[c];
        }

        var solver = new EquilibriumSolver(tableau, totals, composition.Chloride, condition, ln, molality, stride);
        var solved = solver.Solve();
        found = (solver.Freed, solver.IonicStrength);
        return solved;
    }

    // Where no carbon or less is asked for, the search runs it down without end: at the edge it circles in the rounding of the other balances.
    // 1e-7 mol/kg is 0.005 mg/L of alkalinity as CaCO3, far below what a titration can tell from none.
    private static bool CarbonVanished(Condition condition, ReadOnlySpan<double> molality) =>
        condition.Given == ConditionKind.HydrogenActivity && molality[Bicarbonate] + molality[(int)Carbonate] < 1e-7;

    private static Composition Freed(Composition composition, Condition condition, double freed) => condition switch
    {
        { Given: ConditionKind.None } => composition,
        { Free: FreeAmount.Carbon } => composition with { Carbon = composition.Carbon + freed },
        _ => composition with { Carbon = composition.Carbon + freed, Calcium = composition.Calcium + freed },
    };

    // Electroneutrality gives the total of H+: carbon stands as carbonic acid, cyanurate as its acid.
    private static void Totals(Composition c, Span<double> totals)
    {
        totals[(int)Hydrogen] = (2 * c.Carbon) + (3 * c.Cyanurate) - c.StrongCharge;
        totals[(int)Carbonate] = c.Carbon;
        totals[(int)Component.Calcium] = c.Calcium;
        totals[(int)Sodium] = c.Sodium;
        totals[(int)Sulfate] = c.Sulfate;
        totals[(int)Component.Cyanurate] = c.Cyanurate;
        totals[(int)HypochlorousAcid] = c.Chlorine;
        totals[(int)BoricAcid] = c.Boron;
    }

    private static bool IsWater(Composition c) =>
        c is { Carbon: >= 0, Calcium: >= 0, Sodium: >= 0, Chloride: >= 0, Sulfate: >= 0, Cyanurate: >= 0, Chlorine: >= 0, Boron: >= 0 }
        && double.IsFinite(c.Carbon + c.Calcium + c.Sodium + c.Chloride + c.Sulfate + c.Cyanurate + c.Chlorine + c.Boron);
}
