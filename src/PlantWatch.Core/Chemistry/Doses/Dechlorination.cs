using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>g of a dechlorinating product that take 1 g of free chlorine away, between what stoichiometry allows.</summary>
/// <remarks>
/// Thiosulfate goes to sulfate (0.875 g of the pentahydrate a g of Cl2) or to tetrathionate (7.0), by pH, excess and time: nobody knows which beforehand, so the smallest step and a retest.
/// Field figures: a guide for disinfecting water mains, tables 7-2 and 7-5 (published).
/// </remarks>
public static class Dechlorination
{
    /// <summary>From the most effective reaction to the least, in g of pure product a g of Cl2; null for what is no dechlorinator.</summary>
    public static ValueRange? GramsPerGram(ProductKind kind)
    {
        var facts = ProductFacts.Of(kind);
        if (!facts.IsDechlorinator) return null;
        var least = facts.MolarMass / (-facts.ChlorinePerMole * Masses.Chlorine);
        // To tetrathionate two thiosulfates share one chlorine.
        return new(least, kind == ProductKind.SodiumThiosulfate ? 2 * facts.MolarMass / Masses.Chlorine : least);
    }

    /// <summary>What people who dechlorinate in the field use, in g a g of Cl2 (published); null for what is no dechlorinator.</summary>
    public static double? InTheField(ProductKind kind) => kind switch
    {
        ProductKind.SodiumThiosulfate => 1.9,
        ProductKind.SodiumBisulfite => 1.6,
        ProductKind.SodiumSulfite => 2.0,
        ProductKind.AscorbicAcid => 2.5,
        _ => null,
    };
}
