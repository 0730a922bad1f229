using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What is known of a water for its balance, each with its uncertainty. What was never tested is the default, which claims nothing.</summary>
public sealed record BalanceInputs
{
    /// <summary>Dissolved solids in mg/L that stand in when they were never tested; they may as well be 500 or 1500.</summary>
    public static Estimate UsualSolids { get; } = new(1000, 500);

    /// <summary>pH.</summary>
    public Estimate Ph { get; init; }

    /// <summary>Temperature in degC.</summary>
    public Estimate Temperature { get; init; }

    /// <summary>Total alkalinity in mg/L as CaCO3.</summary>
    public Estimate Alkalinity { get; init; }

    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    public Estimate Calcium { get; init; }

    /// <summary>Total dissolved solids in mg/L.</summary>
    public Estimate Solids { get; init; }

    /// <summary>Cyanuric acid in mg/L.</summary>
    public Estimate Cyanurate { get; init; }

    /// <summary>Free chlorine in mg/L as Cl2.</summary>
    public Estimate FreeChlorine { get; init; }

    /// <summary>Boron in mg/L; 0 when there is none.</summary>
    public double BoronMilligramsPerLitre { get; init; }

    /// <summary>What no index can do without and is not there, in the order of the log sheet.</summary>
    public ImmutableArray<Measurand> Missing
    {
        get
        {
            var missing = ImmutableArray.CreateBuilder<Measurand>();
            if (!Ph.IsKnown) missing.Add(Measurand.Ph);
            if (!Temperature.IsKnown) missing.Add(Measurand.Temperature);
            if (!Alkalinity.IsKnown) missing.Add(Measurand.TotalAlkalinity);
            if (!Calcium.IsKnown) missing.Add(Measurand.CalciumHardness);
            return missing.ToImmutable();
        }
    }

    /// <summary>Dissolved solids as tested, or <see cref="UsualSolids"/>.</summary>
    public Estimate SolidsOrUsual => Solids.IsKnown ? Solids : UsualSolids;

    /// <summary>The water, when nothing is missing and every figure is physically possible; null otherwise.</summary>
    public Water? Water =>
        Quantity.TryFrom(Ph.Value, out Ph ph) && Quantity.TryFrom(Temperature.Value, out Celsius temperature) && Quantity.TryFrom(Alkalinity.Value, out Alkalinity alkalinity)
        && Quantity.TryFrom(Calcium.Value, out CalciumHardness calcium) && Quantity.TryFrom(SolidsOrUsual.Value, out DissolvedSolids solids)
        && Quantity.TryFrom(Cyanurate.Value, out CyanuricAcid cyanurate) && Quantity.TryFrom(FreeChlorine.Value, out FreeChlorine chlorine) && Missing.IsEmpty
            ? new(ph, temperature, alkalinity, calcium, solids) { Cyanurate = cyanurate, FreeChlorine = chlorine, BoronMilligramsPerLitre = BoronMilligramsPerLitre }
            : null;
}
