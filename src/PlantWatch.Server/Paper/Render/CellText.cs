using PlantWatch.Core.Readings;
using PlantWatch.Server.Paper.Compose;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Render;

/// <summary>How a line of a cell looks. The default is plain.</summary>
internal enum LineLook
{
    /// <summary>As usual.</summary>
    Plain = 0,
    /// <summary>Outside a limit.</summary>
    Strong,
    /// <summary>Corrected: struck.</summary>
    Struck,
    /// <summary>How it is known.</summary>
    Small,
}

/// <summary>A line of a cell.</summary>
internal readonly record struct CellLine(string Text, LineLook Look);

/// <summary>What a cell reads as, the same on a page, in a file for print and in a table.</summary>
internal sealed class CellText(Sheet sheet)
{
    /// <summary>A dash, where something was expected and is not there.</summary>
    public const string Missing = "\u2013";

    /// <summary>Its lines: what was corrected first and struck, then what stands, then how it is known.</summary>
    public IEnumerable<CellLine> Lines(Cell cell, Column column)
    {
        if (cell.Was is { } was)
            foreach (var line in Struck(was, column)) yield return line;
        if (Main(cell, column) is { Length: > 0 } main) yield return new(main, cell is Number { Beyond: not Beyond.None } ? LineLook.Strong : LineLook.Plain);
        if (Known(cell) is { Length: > 0 } known) yield return new(known, LineLook.Small);
    }

    /// <summary>The value alone, with a unit where the column has none.</summary>
    public string Main(Cell cell, Column column) => cell switch
    {
        Text text => text.Says,
        When moment => sheet.Span.Say(moment.At),
        Number number => Mark(number) + Bound(number) + Write(number.Value, number.Unit) + (column.Unit == number.Unit ? "" : Figures.After(number.Unit)),
        Dash => Missing,
        _ => "",
    };

    /// <summary>How it is known, with its uncertainty.</summary>
    public string Known(Cell cell) =>
        PaperWords.And(cell.Note, cell is Number { U: { } u } number ? "\u00b1\u00a0" + Write(u, number.Unit) : null);

    /// <summary>What stood here before, oldest first, in words: a line through it does not survive every copy.</summary>
    public IEnumerable<CellLine> Struck(Cell was, Column column)
    {
        if (was.Was is { } older)
            foreach (var line in Struck(older, column)) yield return line;
        yield return new(sheet.Words.Paper("struck", Main(was, column)), LineLook.Struck);
    }

    private string Write(double value, string unit) => sheet.Words.Language.Write(Figures.Of(value, unit));

    private static string Bound(Number number) => number.Bound switch { Censoring.Below => "<\u00a0", Censoring.Above => ">\u00a0", _ => "" };

    private static string Mark(Number number) => number.Beyond switch { Beyond.Below => "\u25bc\u00a0", Beyond.Above => "\u25b2\u00a0", _ => "" };
}
