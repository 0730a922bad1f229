using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plans;

/// <summary>What a laboratory counts in a sample of pool water.</summary>
public enum Organism
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Colony count: bacteria that grow at 36 degC, a sign of how well filters and disinfectant work. Counted per mL.</summary>
    ColonyCount,
    /// <summary>Escherichia coli, a sign of faeces. Counted per 100 mL.</summary>
    EscherichiaColi,
    /// <summary>Pseudomonas aeruginosa: skin, eyes and ears; grows in filters, pipes and features. Counted per 100 mL.</summary>
    PseudomonasAeruginosa,
    /// <summary>Legionella: lungs, by the aerosol of spas, sprays and showers. Counted per 100 mL here.</summary>
    Legionella,
}

/// <summary>The volume that a limit of an organism speaks of.</summary>
public static class Organisms
{
    /// <summary>The organisms that limits know, in the order in which they are shown.</summary>
    public static System.Collections.Immutable.ImmutableArray<Organism> All { get; } =
        [Organism.ColonyCount, Organism.EscherichiaColi, Organism.PseudomonasAeruginosa, Organism.Legionella];

    /// <summary>mL to which its count is brought: 1 for colonies, 100 for the others, as the limits of <see cref="PackQuantity"/> are.</summary>
    public static double BasisMillilitres(this Organism organism) => organism == Organism.ColonyCount ? 1 : 100;

    /// <summary>What a pack calls its limit.</summary>
    public static PackQuantity Limiting(this Organism organism) => organism switch
    {
        Organism.ColonyCount => PackQuantity.ColonyCount,
        Organism.EscherichiaColi => PackQuantity.EscherichiaColi,
        Organism.PseudomonasAeruginosa => PackQuantity.PseudomonasAeruginosa,
        Organism.Legionella => PackQuantity.Legionella,
        _ => PackQuantity.Sentence,
    };

    /// <summary>Its word in keys and files, such as <c>escherichia_coli</c>.</summary>
    public static string Key(this Organism organism) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(organism.ToString());
}
