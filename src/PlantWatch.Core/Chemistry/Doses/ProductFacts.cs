using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>What the strength of a product counts.</summary>
public enum GradeBasis
{
    /// <summary>The substance by weight.</summary>
    Substance = 0,
    /// <summary>Available chlorine by weight, as Cl2.</summary>
    AvailableChlorine,
}

/// <summary>The fixed facts of a kind of product. The default grade and density are common practice and used only where the plant file says nothing.</summary>
public sealed record ProductFacts
{
    /// <summary>The kind.</summary>
    public required ProductKind Kind { get; init; }

    /// <summary>Formula; empty where the product has no single one.</summary>
    public string Formula { get; init; } = "";

    /// <summary>Molar mass in g/mol of the substance as the formula writes it; 0 where there is none.</summary>
    public double MolarMass { get; init; }

    /// <summary>What a mole of the substance adds to a water, in mol. A reducing agent takes chlorine away: there it is negative.</summary>
    public Composition PerMole { get; init; }

    /// <summary>What comes along with a mole of the substance in the product as it is sold: salt and excess caustic of a hypochlorite solution (common practice).</summary>
    public Composition Alongside { get; init; }

    /// <summary>What its strength counts.</summary>
    public GradeBasis Basis { get; init; }

    /// <summary>Strength as a fraction by weight where the plant file gives none (common practice); 1 is the pure substance.</summary>
    public double DefaultGrade { get; init; } = 1;

    /// <summary>The form it usually comes in.</summary>
    public ProductForm Form { get; init; }

    /// <summary>True when its effect on a water can be worked out; false for coagulants, bromine products and monopersulfate.</summary>
    public bool IsModelled => MolarMass > 0;

    /// <summary>Moles of available chlorine, as Cl2, in a mole: 0 for a product without, negative for one that takes chlorine away.</summary>
    public double ChlorinePerMole => PerMole.Chlorine;

    /// <summary>True for a product that brings cyanurate with it.</summary>
    public bool IsStabilised => PerMole.Cyanurate > 0;

    /// <summary>True for a product that takes free chlorine away.</summary>
    public bool IsDechlorinator => PerMole.Chlorine < 0;

    /// <summary>Available chlorine of the pure substance as a fraction by weight: 0.9525 for sodium hypochlorite.</summary>
    public double AvailableChlorineOfPure => IsModelled ? PerMole.Chlorine * Masses.Chlorine / MolarMass : 0;

    /// <summary>The facts of a kind.</summary>
    public static ProductFacts Of(ProductKind kind) => ProductTable.Rows.TryGetValue(kind, out var facts) ? facts : new() { Kind = kind };
}
