using PlantWatch.Core.Chemistry;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Commands;

/// <summary>The balance of every water of a table.</summary>
internal static class BalanceTable
{
    public static TableColumns Columns { get; } = new(
        ["id", "pH", "T_C", "TA_mgL_CaCO3", "CH_mgL_CaCO3", "TDS_mgL"],
        ["SI_calcite", "pHs_Langelier", "pHs_fixedAlkCa", "CCPP_mgL_CaCO3", "LSI_table", "LSI_closed"]);

    public static RowAnswer Row(TableRow row)
    {
        if (WaterColumns.Of(row, "pH", "TA_mgL_CaCO3") is not { } water) return RowAnswer.Bad(row.Wrong);
        var result = Equilibrium.Speciate(water);
        var (index, table, closed) = (SpeciatedIndex.Of(result), HandbookIndex.Of(water), ClosedFormIndex.Of(water));
        if (index.Why is { } why) return RowAnswer.Bad(Wording.English.Text(why));
        return new(
            [
                index.Value, result.Value.Ph - index.Value, Calcite.SaturationPh(result.Value), Calcite.PrecipitationPotential(result.Value),
                table.IsKnown ? table.Value : null, closed.IsKnown ? closed.Value : null,
            ],
            string.Join("; ", new[] { ("LSI_table", table), ("LSI_closed", closed) }.Where(m => m.Item2.Why is not null).Select(m => $"{m.Item1}: {Wording.English.Text(m.Item2.Why!)}")));
    }
}
