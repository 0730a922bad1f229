using PlantWatch.Core.Readings;
using PlantWatch.Server.Paper.Compose;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Tables;

/// <summary>A table for programs: a figure is a number alone, what is said of it has columns of its own, and a moment stands with the site's offset and in UTC.</summary>
/// <param name="Heads">Names of the columns.</param>
/// <param name="Rows">A number, a text, or null for each column.</param>
internal sealed record Grid(IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<object?>> Rows)
{
    /// <summary>The grid of a table.</summary>
    public static Grid Of(Table table, Sheet sheet)
    {
        var cells = new CellText(sheet);
        Part[] parts = [.. table.Columns.SelectMany((column, i) => Parts(table, column, i, sheet, cells))];
        return new([.. parts.Select(p => p.Head)], [.. table.Rows.Select(row => (IReadOnlyList<object?>)[.. parts.Select(p => p.Of(row[p.Index]))])]);
    }

    private readonly record struct Part(string Head, int Index, Func<Cell, object?> Of);

    private static IEnumerable<Part> Parts(Table table, Column column, int index, Sheet sheet, CellText cells)
    {
        var head = Units.Of(column) is { Length: > 0 } unit ? $"{column.Name}, {unit}" : column.Name;
        bool Any(Func<Cell, bool> of) => table.Rows.Any(r => of(r[index]));
        switch (column.Kind)
        {
            case ColumnKind.Time:
                yield return new(head, index, c => c is When when ? sheet.Span.Iso(when.At) : Words(cells.Main(c, column)));
                yield return new($"{head}, UTC", index, c => c is When when ? Utc(when.At) : null);
                break;
            case ColumnKind.Number:
                if (Any(c => c is Number { Bound: not Censoring.None })) yield return new(sheet.Words.Paper("bound_of", column.Name), index, c => c is Number { Bound: var bound and not Censoring.None } ? bound == Censoring.Below ? "<" : ">" : null);
                yield return new(head, index, c => c is Number number ? number.Value : Words(cells.Main(c, column)));
                if (column.Unit is null) yield return new(sheet.Words.Paper("unit_of", column.Name), index, c => c is Number number ? Words(Server.Words.Figures.After(number.Unit).Trim('\u00a0')) : null);
                if (Any(c => c is Number { U: not null })) yield return new(sheet.Words.Paper("u_of", column.Name), index, c => (c as Number)?.U);
                if (Any(c => c is Number { Beyond: not Beyond.None })) yield return new(sheet.Words.Paper("beyond_of", column.Name), index, c => c is Number { Beyond: var side and not Beyond.None } ? sheet.Words.PaperWord("beyond", side) : null);
                break;
            default:
                yield return new(head, index, c => Words(cells.Main(c, column)));
                break;
        }

        if (Any(c => c.Note is not null)) yield return new(sheet.Words.Paper("said_of", column.Name), index, c => Words(c.Note));
        if (Any(c => c.Was is not null)) yield return new(sheet.Words.Paper("was_of", column.Name), index, c => c.Was is { } was ? Words(string.Join("; ", cells.Struck(was, column).Select(l => l.Text))) : null);
    }

    private static string? Words(string? text) => string.IsNullOrEmpty(text) ? null : text.Replace('\u00a0', ' ');

    private static string Utc(Core.Quantities.Instant at) => at.ToDateTimeOffset().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
