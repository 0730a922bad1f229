using System.Globalization;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Commands;

/// <summary>Every water of a table after its dose of a pure reagent: closed, no carbon dioxide lost and nothing precipitated.</summary>
internal static class DoseTable
{
    private static readonly Dictionary<string, Composition> Reagents = new(StringComparer.OrdinalIgnoreCase)
    {
        ["HCl"] = new(Chloride: 1), ["H2SO4"] = new(Sulfate: 1), ["NaHSO4"] = new(Sodium: 1, Sulfate: 1), ["CO2"] = new(Carbon: 1), ["NaHCO3"] = new(Sodium: 1, Carbon: 1),
        ["Na2CO3"] = new(Sodium: 2, Carbon: 1), ["NaOH"] = new(Sodium: 1), ["CaCl2"] = new(Calcium: 1, Chloride: 2), ["NaCl"] = new(Sodium: 1, Chloride: 1),
        ["NaOCl"] = new(Sodium: 1, Chlorine: 1), ["Ca(OCl)2"] = new(Calcium: 1, Chlorine: 2),
    };

    // A tenth of a mole in a kg is a pool of reagent.
    private static readonly ValueRange Dose = new(0, 100);

    public static TableColumns Columns { get; } = new(
        ["id", "pH0", "T_C", "TA0_mgL_CaCO3", "CH_mgL_CaCO3", "TDS_mgL", "reagent", "dose_mmol_per_kgw"], ["pH1", "TA1_mgL_CaCO3", "SI1_calcite"]);

    public static RowAnswer Row(TableRow row)
    {
        var known = Reagents.TryGetValue(row.Text("reagent"), out var reagent);
        if (!known) row.Complain($"reagent \"{CsvTable.Short(row.Text("reagent"))}\" is not one of {string.Join(", ", Reagents.Keys)}");
        var dose = row.Number("dose_mmol_per_kgw", Dose);
        if (WaterColumns.Of(row, "pH0", "TA0_mgL_CaCO3") is not { } water) return RowAnswer.Bad(row.Wrong);
        var before = Equilibrium.Speciate(water);
        if (before.Saying() is { } why) return RowAnswer.Bad(Wording.English.Text(why));
        var after = Equilibrium.After(before.Value, before.Value.Composition + (dose / 1000 * reagent));
        if (after.Saying() is { } failure) return RowAnswer.Bad(Wording.English.Text(failure));
        return Equilibrium.ValidPh.Contains(after.Value.Ph)
            ? new([after.Value.Ph, after.Value.TotalAlkalinity, after.Value.SaturationIndex], double.IsFinite(after.Value.SaturationIndex) ? "" : "SI1_calcite: no calcium or no carbonate")
            : RowAnswer.Bad(string.Create(CultureInfo.InvariantCulture, $"the dose takes pH to {after.Value.Ph:0.0}, outside {Equilibrium.ValidPh.Low} to {Equilibrium.ValidPh.High} that waters are worked out for"));
    }
}
