using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>Shares the width of a page among columns: each its longest word at least, sentences the rest.</summary>
internal static class ColumnWidths
{
    /// <summary>Room to the left and right of what stands in a cell.</summary>
    public const double Padding = 3;

    private const double LongestWord = 96, LongestLine = 250, LongestOfNarrow = 110;

    /// <summary>The widths, in points; together the width of the page.</summary>
    public static double[] Of(Table table, CellText cells, Ink ink, Wrapping wrap)
    {
        var least = new double[table.Columns.Count];
        var wanted = new double[table.Columns.Count];
        for (var i = 0; i < least.Length; i++) (least[i], wanted[i]) = Ask(table, i, cells, ink, wrap);
        var (sumLeast, sumWanted) = (least.Sum(), wanted.Sum());
        if (sumLeast >= Ink.Width) return [.. least.Select(w => w * Ink.Width / sumLeast)];
        if (sumWanted > Ink.Width) return [.. least.Select((w, i) => w + ((wanted[i] - w) * (Ink.Width - sumLeast) / (sumWanted - sumLeast)))];
        var wide = table.Columns.Count(c => c.Wide);
        return [.. wanted.Select((w, i) => w + ((Ink.Width - sumWanted) * (wide == 0 ? 1.0 / least.Length : table.Columns[i].Wide ? 1.0 / wide : 0)))];
    }

    private static (double Least, double Wanted) Ask(Table table, int index, CellText cells, Ink ink, Wrapping wrap)
    {
        var column = table.Columns[index];
        var least = Math.Max(wrap.Longest(column.Name, ink.CellStrong), wrap.Of(Units.Of(column), ink.Cell));
        var wanted = least;
        foreach (var line in table.Rows.SelectMany(r => cells.Lines(r[index], column)))
        {
            var font = ink.Of(line.Look).Font;
            // A time is not broken in two.
            least = Math.Max(least, Math.Min(LongestWord, column.Kind == ColumnKind.Time ? wrap.Of(line.Text, font) : wrap.Longest(line.Text, font)));
            wanted = Math.Max(wanted, Math.Min(column.Wide ? LongestLine : LongestOfNarrow, wrap.Of(line.Text, font)));
        }

        return (least + (2 * Padding), Math.Max(least, wanted) + (2 * Padding));
    }
}
