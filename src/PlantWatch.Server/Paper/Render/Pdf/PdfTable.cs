using PdfSharp.Drawing;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>Draws a table over as many pages as it takes: its heads on each, no row cut unless it is longer than a page.</summary>
internal sealed class PdfTable(Table table, CellText cells, Ink ink, Pages pages)
{
    private readonly record struct Line(string Text, XFont Font, XBrush Brush);

    private const double Above = 2;
    private readonly double[] _widths = ColumnWidths.Of(table, cells, ink, pages.Wrap);
    private List<Line>[] _head = [];

    /// <summary>Draws it.</summary>
    public void Draw()
    {
        _head = [.. table.Columns.Select((c, i) => Head(c, _widths[i]))];
        // Caption, heads and a first row stay together.
        pages.Need(Ink.TextLine + Height(_head) + (3 * Ink.TableLine));
        pages.Write(table.Caption, ink.Text, Ink.Soft, Ink.TextLine);
        Row(_head, isHead: true);
        foreach (var row in table.Rows) Row([.. row.Select((cell, i) => Body(cell, table.Columns[i], _widths[i]))]);
        pages.Y += 8;
    }

    private List<Line> Head(Column column, double width) =>
    [
        .. pages.Wrap.Lines(column.Name, ink.CellStrong, width - (2 * ColumnWidths.Padding)).Select(l => new Line(l, ink.CellStrong, Ink.Black)),
        .. Units.Of(column) is { Length: > 0 } unit ? (Line[])[new(unit, ink.Cell, Ink.Soft)] : [],
    ];

    private List<Line> Body(Cell cell, Column column, double width) =>
    [
        .. from line in cells.Lines(cell, column)
           let look = ink.Of(line.Look)
           from text in pages.Wrap.Lines(line.Text, look.Font, width - (2 * ColumnWidths.Padding))
           select new Line(text, look.Font, look.Brush),
    ];

    private void Row(List<Line>[] row)
    {
        if (pages.Need(Height(row))) Row(_head, isHead: true);
        // Longer than a page: as many lines as fit, and the rest under heads of its own.
        while (Height(row) > pages.Room && row.Any(c => c.Count > 1))
        {
            // Heads as long as a page leave no room at all: a line goes on all the same, or it would never end.
            var lines = Math.Max(1, (int)((pages.Room - (2 * Above)) / Ink.TableLine));
            Row([.. row.Select(c => c.Take(lines).ToList())], isHead: false);
            row = [.. row.Select(c => c.Skip(lines).ToList())];
            pages.Turn();
            Row(_head, isHead: true);
        }

        Row(row, isHead: false);
    }

    private void Row(List<Line>[] row, bool isHead)
    {
        var (height, x, on) = (Height(row), Ink.Side, pages.On);
        if (isHead) on.DrawRectangle(Ink.Head, Ink.Side, pages.Y, Ink.Width, height);
        for (var i = 0; i < row.Length; x += _widths[i++])
        {
            on.DrawLine(Ink.Hairline, x, pages.Y, x, pages.Y + height);
            Cell(row[i], x, _widths[i], table.Columns[i].Kind == ColumnKind.Number);
        }

        on.DrawLine(Ink.Hairline, Ink.Side + Ink.Width, pages.Y, Ink.Side + Ink.Width, pages.Y + height);
        if (isHead) on.DrawLine(Ink.Hairline, Ink.Side, pages.Y, Ink.Side + Ink.Width, pages.Y);
        pages.Y += height;
        on.DrawLine(Ink.Hairline, Ink.Side, pages.Y, Ink.Side + Ink.Width, pages.Y);
    }

    private void Cell(List<Line> lines, double x, double width, bool right)
    {
        var y = pages.Y + Above;
        foreach (var (text, font, brush) in lines)
        {
            var left = right ? x + width - ColumnWidths.Padding - pages.Wrap.Of(text, font) : x + ColumnWidths.Padding;
            pages.On.DrawString(text, font, brush, left, y + ink.Cell.Size);
            y += Ink.TableLine;
        }
    }

    private static double Height(List<Line>[] row) => (Math.Max(1, row.Max(c => c.Count)) * Ink.TableLine) + (2 * Above);
}
