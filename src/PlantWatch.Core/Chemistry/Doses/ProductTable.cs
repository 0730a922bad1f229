using System.Collections.Frozen;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Chemistry;

/// <summary>The table of products. Molar masses from atomic weights (IUPAC 2005, as in <see cref="Masses"/>); reactions are those of textbook stoichiometry.</summary>
/// <remarks>
/// Default grades are common practice: 31.45 % acid (20 degrees Baume), 93.2 % dry acid, 65 % calcium hypochlorite, 90 % trichlor, 12 % hypochlorite by trade. Hypochlorite solution is made
/// from chlorine and caustic, so that a mole of salt comes with each mole, and 0.25 to 0.35 % of caustic is left in it against decay: about 0.05 mol a mole (published range, common practice).
/// </remarks>
internal static class ProductTable
{
    private const double Hydrogen = 1.00794, Oxygen = 15.9994, Carbon = 12.0107, Sulfur = 32.065, Nitrogen = 14.0067;
    private const double Na = Masses.Sodium, Cl = Masses.Chloride, Ca = Masses.Calcium;
    private const double WaterMass = (2 * Hydrogen) + Oxygen;
    private const double CyanurateRing = (3 * Carbon) + (3 * Nitrogen) + (3 * Oxygen);

    public static FrozenDictionary<ProductKind, ProductFacts> Rows { get; } = Make().ToFrozenDictionary(row => row.Kind);

    private static ProductFacts[] Make() =>
    [
        Chlorine(ProductKind.SodiumHypochlorite, "NaOCl", Na + Oxygen + Cl, new(Sodium: 1, Chlorine: 1), 0.10, ProductForm.Liquid)
            with { Alongside = new(Sodium: 1.05, Chloride: 1) },
        Chlorine(ProductKind.CalciumHypochlorite, "Ca(OCl)2", Ca + (2 * (Oxygen + Cl)), new(Calcium: 1, Chlorine: 2), 0.65, ProductForm.Granules),
        Chlorine(ProductKind.Dichlor, "C3N3O3Cl2Na", CyanurateRing + (2 * Cl) + Na, new(Sodium: 1, Cyanurate: 1, Chlorine: 2), 0.62, ProductForm.Granules),
        Chlorine(ProductKind.DichlorDihydrate, "C3N3O3Cl2Na\u00b72H2O", CyanurateRing + (2 * Cl) + Na + (2 * WaterMass), new(Sodium: 1, Cyanurate: 1, Chlorine: 2), 0.55, ProductForm.Granules),
        Chlorine(ProductKind.Trichlor, "C3N3O3Cl3", CyanurateRing + (3 * Cl), new(Cyanurate: 1, Chlorine: 3), 0.90, ProductForm.Tablets),
        // Cl2 + H2O = HOCl + H+ + Cl-.
        Chlorine(ProductKind.ChlorineGas, "Cl2", Masses.Chlorine, new(Chloride: 1, Chlorine: 1), 1, ProductForm.Gas),
        Of(ProductKind.CyanuricAcid, "C3H3N3O3", Masses.CyanuricAcid, new(Cyanurate: 1), 1, ProductForm.Granules),
        Of(ProductKind.HydrochloricAcid, "HCl", Hydrogen + Cl, new(Chloride: 1), 0.3145, ProductForm.Liquid),
        Of(ProductKind.SulfuricAcid, "H2SO4", (2 * Hydrogen) + Sulfur + (4 * Oxygen), new(Sulfate: 1), 0.385, ProductForm.Liquid),
        Of(ProductKind.SodiumBisulfate, "NaHSO4", Na + Hydrogen + Sulfur + (4 * Oxygen), new(Sodium: 1, Sulfate: 1), 0.932, ProductForm.Granules),
        Of(ProductKind.CarbonDioxide, "CO2", Masses.CarbonDioxide, new(Carbon: 1), 1, ProductForm.Gas),
        Of(ProductKind.SodiumBicarbonate, "NaHCO3", Na + Masses.Bicarbonate, new(Carbon: 1, Sodium: 1), 1, ProductForm.Powder),
        Of(ProductKind.SodiumCarbonate, "Na2CO3", (2 * Na) + Carbon + (3 * Oxygen), new(Carbon: 1, Sodium: 2), 1, ProductForm.Powder),
        Of(ProductKind.SodiumHydroxide, "NaOH", Na + Oxygen + Hydrogen, new(Sodium: 1), 0.32, ProductForm.Liquid),
        Of(ProductKind.CalciumChloride, "CaCl2", Ca + (2 * Cl), new(Calcium: 1, Chloride: 2), 1, ProductForm.Granules),
        Of(ProductKind.CalciumChlorideDihydrate, "CaCl2\u00b72H2O", Ca + (2 * Cl) + (2 * WaterMass), new(Calcium: 1, Chloride: 2), 1, ProductForm.Granules),
        Of(ProductKind.SodiumChloride, "NaCl", Masses.SodiumChloride, new(Sodium: 1, Chloride: 1), 1, ProductForm.Granules),
        // To sulfate: S2O3-- + 4 HOCl + H2O = 2 SO4-- + 4 Cl- + 6 H+, the most chlorine a gram can take. To tetrathionate it takes an eighth of that.
        Of(ProductKind.SodiumThiosulfate, "Na2S2O3\u00b75H2O", (2 * Na) + (2 * Sulfur) + (3 * Oxygen) + (5 * WaterMass),
            new(Sodium: 2, Chloride: 4, Sulfate: 2, Chlorine: -4), 1, ProductForm.Granules),
        Of(ProductKind.SodiumSulfite, "Na2SO3", (2 * Na) + Sulfur + (3 * Oxygen), new(Sodium: 2, Chloride: 1, Sulfate: 1, Chlorine: -1), 1, ProductForm.Powder),
        Of(ProductKind.SodiumBisulfite, "NaHSO3", Na + Hydrogen + Sulfur + (3 * Oxygen), new(Sodium: 1, Chloride: 1, Sulfate: 1, Chlorine: -1), 1, ProductForm.Powder),
        // C6H8O6 + HOCl = C6H6O6 + H+ + Cl- + H2O. What is left of it is no ion of a strong acid.
        Of(ProductKind.AscorbicAcid, "C6H8O6", (6 * Carbon) + (8 * Hydrogen) + (6 * Oxygen), new(Chloride: 1, Chlorine: -1), 1, ProductForm.Powder),
    ];

    private static ProductFacts Of(ProductKind kind, string formula, double mass, Composition perMole, double grade, ProductForm form) =>
        new() { Kind = kind, Formula = formula, MolarMass = mass, PerMole = perMole, DefaultGrade = grade, Form = form };

    private static ProductFacts Chlorine(ProductKind kind, string formula, double mass, Composition perMole, double grade, ProductForm form) =>
        Of(kind, formula, mass, perMole, grade, form) with { Basis = GradeBasis.AvailableChlorine };
}
