using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands;

/// <summary>The columns that describe a water.</summary>
internal static class WaterColumns
{
    /// <summary>The water of a row, or null with what is wrong remembered in the row.</summary>
    public static Water? Of(TableRow row, string ph, string alkalinity)
    {
        var water = new Water(
            Ph.From(row.Number(ph, Equilibrium.ValidPh)), Celsius.From(row.Number("T_C", Equilibrium.ValidCelsius)),
            Alkalinity.From(row.Number(alkalinity, Measurand.TotalAlkalinity.Possible())), CalciumHardness.From(row.Number("CH_mgL_CaCO3", Measurand.CalciumHardness.Possible())),
            DissolvedSolids.From(row.Number("TDS_mgL", new(0, Equilibrium.MostSolids))));
        return row.IsGood ? water : null;
    }
}
