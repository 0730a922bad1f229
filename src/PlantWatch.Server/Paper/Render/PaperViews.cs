using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render;

/// <summary>A sheet as a page of ours shows it: strips and lines to sign on are for paper, and stand there as what they show.</summary>
internal sealed class PaperViews(Sheet sheet)
{
    private readonly CellText _cells = new(sheet);

    /// <summary>The view.</summary>
    public static PaperView Of(Sheet sheet) => new PaperViews(sheet).View();

    private PaperView View() => new(sheet.Kind.Key(), sheet.Title, PageWords.Foot(sheet), [.. sheet.Sections.Select(s => new PaperSection(s.Heading, s.Level, [.. s.Blocks.Select(Block).OfType<PaperBlock>()])).Where(s => s.Blocks.Count > 0)]);

    private PaperBlock? Block(Block block) => block switch
    {
        Facts facts => new(null, [.. facts.Of.Select(f => new PaperFact(f.Name, f.Value))], null),
        Table { Rows.Count: 0 } empty => new(empty.WhenEmpty, null, null),
        Table table => new(null, null, Table(table)),
        Remark remark => new(remark.Text, null, null),
        StripPicture strip => new(strip.Describes, null, null),
        _ => null,
    };

    private PaperTable Table(Table table) => new(
        table.Caption, [.. table.Columns.Select(c => new PaperColumn(c.Name, Units.Of(c), c.Kind == ColumnKind.Number))],
        [.. table.Rows.Select(row => (IReadOnlyList<PaperCell>)[.. row.Select((cell, i) => Cell(cell, table.Columns[i]))])]);

    private PaperCell Cell(Cell cell, Column column) => new(
        cell.Was is { } was ? [.. _cells.Struck(was, column).Select(l => l.Text)] : [], _cells.Main(cell, column), cell is Number { Beyond: not Beyond.None }, _cells.Known(cell) is { Length: > 0 } known ? known : null);
}
