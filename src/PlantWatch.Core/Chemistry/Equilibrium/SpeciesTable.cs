using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>The species of pool water with their constants. The first eight are the components themselves, in their order.</summary>
/// <remarks>
/// Carbonate, calcium, sodium, water and calcite: the public-domain database phreeqc.dat of USGS PHREEQC 3.8.9. Cyanurate and chlorine: O'Brien, Morris and Butler (1974), full set at
/// 25 degC and ionic strength 0, as listed by US EPA ORD; the same at every temperature, for want of others. Hypochlorous acid: Morris (1966), from memory. Sulfate pairs and boric acid:
/// from memory after the same database; they matter in the third decimal of pH only.
/// </remarks>
internal static class SpeciesTable
{
    private static readonly LogK None = new(0);
    private static readonly LogK Bicarbonate = new(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9);

    // Cyanurate, one proton after the other, then one chlorine after the other.
    private static readonly LogK HCy = new(13.5);
    private static readonly LogK H2Cy = HCy + new LogK(11.40);
    private static readonly LogK ClCy = HCy + new LogK(6.90);
    private static readonly LogK HClCy = ClCy + new LogK(10.12);
    private static readonly LogK Cl2Cy = HClCy + new LogK(4.51);
    private static readonly LogK HCl2Cy = Cl2Cy + new LogK(3.75);

    private static readonly ActivityRule Uncharged = ActivityRule.Neutral(0.1);

    /// <summary>All of them.</summary>
    public static AqueousSpecies[] All { get; } =
    [
        new("H+", 1, None, ActivityRule.Ion(9, 0), [(Hydrogen, 1)]),
        new("CO3--", -2, None, ActivityRule.Ion(5.4, 0), [(Carbonate, 1)]),
        new("Ca++", 2, None, ActivityRule.Ion(5, 0.165), [(Calcium, 1)]),
        new("Na+", 1, None, ActivityRule.Ion(4.08, 0.082), [(Sodium, 1)]),
        new("SO4--", -2, None, ActivityRule.Ion(5, -0.04), [(Sulfate, 1)]),
        new("Cy---", -3, None, ActivityRule.Davies, [(Cyanurate, 1)]),
        new("HOCl", 0, None, Uncharged, [(HypochlorousAcid, 1)]),
        new("B(OH)3", 0, None, Uncharged, [(BoricAcid, 1)]),

        new("OH-", -1, new(293.29227, 0.1360833, -10576.913, -123.73158, 0, -6.996455e-5), ActivityRule.Ion(3.5, 0), [(Hydrogen, -1)], Water: -1),
        new("HCO3-", -1, Bicarbonate, ActivityRule.Ion(5.4, 0.0078), [(Hydrogen, 1), (Carbonate, 1)]),
        new("CO2", 0, new(464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9), ActivityRule.Neutral(0.066), [(Hydrogen, 2), (Carbonate, 1)], Water: 1),
        new("CaCO3", 0, new(-1228.732, -0.29944, 35512.75, 485.818), Uncharged, [(Calcium, 1), (Carbonate, 1)]),
        new("CaHCO3+", 1, new(56.273, -0.041779, -11194), ActivityRule.Ion(6, 0), [(Calcium, 1), (Hydrogen, 1), (Carbonate, 1)]),
        new("CaOH+", 1, new(-12.78), ActivityRule.Davies, [(Calcium, 1), (Hydrogen, -1)], Water: -1),
        new("NaHCO3", 0, Bicarbonate + new LogK(-3.589, 7.94e-3, 273), ActivityRule.Neutral(0.151), [(Sodium, 1), (Hydrogen, 1), (Carbonate, 1)]),

        new("CaSO4", 0, new(2.14), Uncharged, [(Calcium, 1), (Sulfate, 1)]),
        new("NaSO4-", -1, new(0.7), ActivityRule.Davies, [(Sodium, 1), (Sulfate, 1)]),
        new("HSO4-", -1, new(1.988), ActivityRule.Davies, [(Hydrogen, 1), (Sulfate, 1)]),

        new("OCl-", -1, HoclShare.Dissociation, ActivityRule.Davies, [(HypochlorousAcid, 1), (Hydrogen, -1)]),
        new("B(OH)4-", -1, new(-9.24), ActivityRule.Davies, [(BoricAcid, 1), (Hydrogen, -1)], Water: -1),

        new("HCy--", -2, HCy, ActivityRule.Davies, [(Hydrogen, 1), (Cyanurate, 1)]),
        new("H2Cy-", -1, H2Cy, ActivityRule.Davies, [(Hydrogen, 2), (Cyanurate, 1)]),
        new("H3Cy", 0, H2Cy + new LogK(6.88), Uncharged, [(Hydrogen, 3), (Cyanurate, 1)]),
        new("ClCy--", -2, ClCy, ActivityRule.Davies, [(Hydrogen, 1), (Cyanurate, 1), (HypochlorousAcid, 1)], Water: 1),
        new("HClCy-", -1, HClCy, ActivityRule.Davies, [(Hydrogen, 2), (Cyanurate, 1), (HypochlorousAcid, 1)], Water: 1),
        new("H2ClCy", 0, HClCy + new LogK(5.33), Uncharged, [(Hydrogen, 3), (Cyanurate, 1), (HypochlorousAcid, 1)], Water: 1),
        new("Cl2Cy-", -1, Cl2Cy, ActivityRule.Davies, [(Hydrogen, 2), (Cyanurate, 1), (HypochlorousAcid, 2)], Water: 2),
        new("HCl2Cy", 0, HCl2Cy, Uncharged, [(Hydrogen, 3), (Cyanurate, 1), (HypochlorousAcid, 2)], Water: 2),
        new("Cl3Cy", 0, HCl2Cy + new LogK(1.80), Uncharged, [(Hydrogen, 3), (Cyanurate, 1), (HypochlorousAcid, 3)], Water: 3),
    ];

    /// <summary>Solubility product of calcite (phreeqc.dat 3.8.9): 10^-8.45 at 25 degC.</summary>
    public static LogK Calcite { get; } = new(-67.87, -0.051813, 0, 30.25746);

    /// <summary>Index of a species by its formula.</summary>
    public static int IndexOf(string name) => Array.FindIndex(All, s => s.Name == name);
}
