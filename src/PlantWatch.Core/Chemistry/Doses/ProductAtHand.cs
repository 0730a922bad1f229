using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>A product as it stands in the store today: what a kg or a litre of it adds to a water, and what that costs.</summary>
public sealed record ProductAtHand
{
    private ProductAtHand(ProductPlan plan, ProductFacts facts, ProductStrength strength) => (Plan, Facts, Strength) = (plan, facts, strength);

    /// <summary>The product as the plant file has it.</summary>
    public ProductPlan Plan { get; }

    /// <summary>Facts of its kind.</summary>
    public ProductFacts Facts { get; }

    /// <summary>How strong it is today, and how that is known.</summary>
    public ProductStrength Strength { get; }

    /// <summary>Works a product out for a day.</summary>
    /// <param name="plan">The product as the plant file has it.</param>
    /// <param name="today">Today on the site's calendar.</param>
    public static ProductAtHand Of(ProductPlan plan, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var facts = ProductFacts.Of(plan.Kind);
        return new(plan, facts, ProductStrength.Of(plan, facts, today));
    }

    /// <summary>True when its effect on a water can be worked out.</summary>
    public bool IsModelled => Facts.IsModelled;

    /// <summary>Mol that a kg as delivered adds to a water today. Nothing for what is not modelled; chlorine is negative for what takes it away.</summary>
    public Composition PerKilogram => IsModelled
        ? (FreshMolesPerKilogram * (Facts.PerMole + Facts.Alongside)).ChlorineSpent(Facts.IsDechlorinator || Strength.Fresh <= 0 ? 0 : 1 - (Strength.Fraction / Strength.Fresh))
        : default;

    /// <summary>Density in kg/L; null for what is not liquid and has none stated.</summary>
    public double? KilogramsPerLitre => Strength.Density;

    /// <summary>Price of a kg in the plant's money; null when the plant file gives none.</summary>
    public double? CostPerKilogram => Plan.PricePerKilogram ?? (Plan.PricePerLitre is { } litre && KilogramsPerLitre is { } density ? litre / density : null);

    /// <summary>Available chlorine in kg a kg today, as Cl2; 0 for a product without, negative for one that takes chlorine away.</summary>
    public double AvailableChlorine => PerKilogram.Chlorine * Masses.Chlorine / 1000;

    /// <summary>True when it is poured into the pool itself, whose water must bear it until it has mixed with the rest of the circuit's. Where the plant file does not say, it is.</summary>
    public bool GoesIntoThePool => Plan.AddedBy != DosingWay.Pump && Plan.AddedTo is (DosingPlace.Pool or DosingPlace.Unknown);

    /// <summary>The form it comes in.</summary>
    public ProductForm Form => Plan.Form == ProductForm.Unknown ? Facts.Form : Plan.Form;

    /// <summary>True when it is measured out by the litre.</summary>
    public bool IsLiquid => Form == ProductForm.Liquid && KilogramsPerLitre is not null;

    // The loss of hypochlorite turns chlorine into chloride and chlorate; the sodium stays.
    private double FreshMolesPerKilogram => Facts.Basis == GradeBasis.AvailableChlorine
        ? 1000 * Strength.Fresh / (Facts.ChlorinePerMole * Masses.Chlorine)
        : 1000 * Strength.Fresh / Facts.MolarMass;
}
