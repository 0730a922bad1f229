using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

/// <summary>200 pool waters and 96 doses computed with USGS PHREEQC 3.8.9, phreeqc.dat (an independent program; recipe in docs/sources.md).</summary>
public sealed class PhreeqcGridTests
{
    private static readonly (string Reagent, Composition PerMole)[] Reagents =
    [
        ("HCl", new(Chloride: 1)), ("NaHSO4", new(Sodium: 1, Sulfate: 1)), ("CO2", new(Carbon: 1)), ("NaHCO3", new(Carbon: 1, Sodium: 1)),
        ("Na2CO3", new(Carbon: 1, Sodium: 2)), ("NaOH", new(Sodium: 1)), ("CaCl2", new(Calcium: 1, Chloride: 2)),
    ];

    [Fact]
    public void The_saturation_index_is_met_within_a_thousandth_on_every_water() =>
        Worst("phreeqc_grid.csv", 200, 0.001, (row, water) => water.SaturationIndex - row.Number("SI_calcite"));

    [Fact]
    public void Both_saturation_pHs_are_met_within_a_thousandth_on_every_water()
    {
        Worst("phreeqc_grid.csv", 200, 0.001, (row, water) => Calcite.SaturationPh(water)!.Value - row.Number("pHs_fixedAlkCa"));
        Worst("phreeqc_grid.csv", 200, 0.001, (row, water) => water.Ph - water.SaturationIndex - row.Number("pHs_Langelier_pH_minus_SI"));
    }

    [Fact]
    public void The_precipitation_potential_is_met_within_a_twentieth_of_a_milligram_on_every_water() =>
        Worst("phreeqc_grid.csv", 200, 0.05, (row, water) => Calcite.PrecipitationPotential(water)!.Value - row.Number("CCPP_mgL_CaCO3"));

    [Fact]
    public void Ionic_strength_carbon_and_carbon_dioxide_are_met()
    {
        Worst("phreeqc_grid.csv", 200, 1e-5, (row, water) => water.IonicStrength - row.Number("I_mol_kgw"));
        Worst("phreeqc_grid.csv", 200, 2e-4, (row, water) => (1000 * water.Composition.Carbon / row.Number("DIC_mmol_kgw")) - 1);
        Worst("phreeqc_grid.csv", 200, 5e-4, (row, water) => (water.CarbonDioxide / row.Number("CO2aq_mgL_as_CO2")) - 1);
    }

    [Fact]
    public void The_answer_to_every_dose_is_met()
    {
        Worst("phreeqc_dose_grid.csv", 96, 0.005, (row, water) => Dosed(row, water).Ph - row.Number("pH1"), "0");
        Worst("phreeqc_dose_grid.csv", 96, 0.02, (row, water) => Dosed(row, water).TotalAlkalinity - row.Number("TA1_mgL_CaCO3"), "0");
        Worst("phreeqc_dose_grid.csv", 96, 0.005, (row, water) => Dosed(row, water).SaturationIndex - row.Number("SI1_calcite"), "0");
    }

    private static Speciation Dosed(Dictionary<string, string> row, Speciation water)
    {
        var per = Reagents.Single(r => r.Reagent == row["reagent"]).PerMole;
        return Equilibrium.After(water, water.Composition + (row.Number("dose_mmol_per_kgw") / 1000 * per)).Value;
    }

    private static void Worst(string file, int rows, double tolerance, Func<Dictionary<string, string>, Speciation, double> off, string start = "")
    {
        var all = ReferenceRows.Of("Chemistry", file);
        Assert.Equal(rows, all.Count);
        var worst = all.Select(row => (Off: Math.Abs(off(row, Waters.Of(row, start))), Id: row["id"])).MaxBy(w => double.IsNaN(w.Off) ? double.MaxValue : w.Off);
        Assert.True(worst.Off <= tolerance, $"{worst.Id} is off by {worst.Off}, allowed is {tolerance}");
    }
}

/// <summary>Waters from the columns of the reference tables.</summary>
internal static class Waters
{
    public static Speciation Of(Dictionary<string, string> row, string start = "") => Equilibrium.Speciate(Of(
        row.Number("pH" + start), row.Number("T_C"), row.Number($"TA{start}_mgL_CaCO3"), row.Number("CH_mgL_CaCO3"), row.Number("TDS_mgL"))).Value;

    public static Water Of(double ph, double celsius, double alkalinity, double calcium, double solids) =>
        new(Ph.From(ph), Celsius.From(celsius), Alkalinity.From(alkalinity), CalciumHardness.From(calcium), DissolvedSolids.From(solids));
}
