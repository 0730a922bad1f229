using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>The balance of a water: every index side by side, what each may claim, and what has to be said of them.</summary>
public sealed record BalanceSheet
{
    /// <summary>By the speciated model: the one to go by.</summary>
    public IndexResult Speciated { get; init; }

    /// <summary>By the handbook's factor tables: the one on the log sheet.</summary>
    public IndexResult Handbook { get; init; }

    /// <summary>By the closed form of four logarithms.</summary>
    public IndexResult ClosedForm { get; init; }

    /// <summary>By constants and one activity coefficient.</summary>
    public IndexResult IonicStrength { get; init; }

    /// <summary>pH less the speciated index: the saturation pH that handbooks mean.</summary>
    public double? SaturationPh { get; init; }

    /// <summary>The pH at which the same alkalinity and calcium would be just saturated, carbon dioxide moved. Known without a pH test as well, then by the ionic-strength form.</summary>
    public double? SaturationPhMoved { get; init; }

    /// <summary>mg/L as CaCO3 that would precipitate (above 0) or dissolve (below 0), closed to carbon dioxide.</summary>
    public double? PrecipitationPotential { get; init; }

    /// <summary>Ryznar index: for town mains, shown only.</summary>
    public double? Ryznar { get; init; }

    /// <summary>Puckorius index: for cooling towers, shown only.</summary>
    public double? Puckorius { get; init; }

    /// <summary>Larson-Skold ratio: for mild steel, shown only; chloride is taken as what fills the dissolved solids up.</summary>
    public double? LarsonSkold { get; init; }

    /// <summary>What cyanurate and borate hold of the alkalinity, taken off it, in mg/L as CaCO3.</summary>
    public double AlkalinityTakenOff { get; init; }

    /// <summary>The speciated water; null when there is none.</summary>
    public Speciation? Water { get; init; }

    /// <summary>Tests that are missing for any index.</summary>
    public ImmutableArray<Measurand> Missing { get; init; } = [];

    /// <summary>What has to be said: what was assumed, taken off, or is impossible.</summary>
    public ImmutableArray<Reason> Sayings { get; init; } = [];
}
