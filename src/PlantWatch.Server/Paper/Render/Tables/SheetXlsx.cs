using System.Globalization;
using System.Text;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;
using Block = PlantWatch.Server.Paper.Model.Block;
using OfSheet = PlantWatch.Server.Paper.Model.Sheet;
using OfTable = PlantWatch.Server.Paper.Model.Table;

namespace PlantWatch.Server.Paper.Render.Tables;

/// <summary>A sheet as a workbook: what it says of itself first, then a worksheet a table. Numbers are numbers; words are words, also where they look like a formula.</summary>
internal static class SheetXlsx
{
    private const uint Plain = 0, Bold = 1, Quoted = 2;

    /// <summary>The file.</summary>
    public static byte[] Write(OfSheet sheet)
    {
        using var bytes = new MemoryStream();
        using (var file = SpreadsheetDocument.Create(bytes, SpreadsheetDocumentType.Workbook))
        {
            var book = file.AddWorkbookPart();
            book.Workbook = new Workbook();
            book.AddNewPart<WorkbookStylesPart>().Stylesheet = Styles();
            var sheets = book.Workbook.AppendChild(new Sheets());
            var names = new TabNames();
            Add(book, sheets, names.Of(Clean(sheet.Title)), About(sheet));
            foreach (var (section, table) in sheet.Sections.SelectMany(s => s.Blocks.OfType<OfTable>().Select(t => (s, t))))
                if (table.Rows.Count > 0) Add(book, sheets, names.Of(Clean(table.Caption)), Tabled(sheet, section, table));
        }

        return bytes.ToArray();
    }

    // All that is no table, and every table that is empty with its sentence.
    private static IEnumerable<Row> About(OfSheet sheet)
    {
        yield return Line(Bold, PageWords.Head(sheet));
        yield return Line(Plain, PageWords.Foot(sheet));
        foreach (var section in sheet.Sections)
        {
            yield return Line(Bold, section.Heading);
            foreach (var row in section.Blocks.SelectMany(Said)) yield return row;
        }
    }

    private static IEnumerable<Row> Said(Block block) => block switch
    {
        Facts facts => facts.Of.Select(f => Line(Plain, f.Name, f.Value)),
        OfTable table => [Line(Plain, table.Caption, table.Rows.Count == 0 ? table.WhenEmpty : null)],
        Remark remark => [Line(Plain, remark.Text)],
        _ => [],
    };

    private static IEnumerable<Row> Tabled(OfSheet sheet, Section section, OfTable table)
    {
        var grid = Grid.Of(table, sheet);
        yield return Line(Bold, $"{section.Heading}: {table.Caption}");
        yield return Line(Bold, [.. grid.Heads]);
        foreach (var row in grid.Rows) yield return Line(Plain, [.. row]);
    }

    private static Row Line(uint style, params IEnumerable<object?> values) => new(values.Select(v => Of(v, style)));

    private static DocumentFormat.OpenXml.Spreadsheet.Cell Of(object? value, uint style) => value switch
    {
        double number => new() { CellValue = new CellValue(number.ToString("R", CultureInfo.InvariantCulture)), DataType = CellValues.Number, StyleIndex = style },
        string text => new() { InlineString = new InlineString(new DocumentFormat.OpenXml.Spreadsheet.Text(Clean(text)) { Space = SpaceProcessingModeValues.Preserve }), DataType = CellValues.InlineString, StyleIndex = SafeText.LooksLikeFormula(text) ? Quoted : style },
        _ => new() { StyleIndex = style },
    };

    // Control characters, what is no character, and half of one cannot stand in XML at all.
    private static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogatePair(text, i)) clean.Append(text, i++, 2);
            else if (XmlConvert.IsXmlChar(text[i]) && (text[i] is '\t' or '\n' or '\r' || !char.IsControl(text[i]))) clean.Append(text[i]);
        }

        return clean.ToString();
    }

    private static void Add(WorkbookPart book, Sheets sheets, string name, IEnumerable<Row> rows)
    {
        var part = book.AddNewPart<WorksheetPart>();
        part.Worksheet = new Worksheet(new SheetData(rows));
        sheets.Append(new DocumentFormat.OpenXml.Spreadsheet.Sheet { Id = book.GetIdOfPart(part), SheetId = (uint)(sheets.ChildElements.Count + 1), Name = name });
    }

    private static Stylesheet Styles() => new(
        new Fonts(new Font(), new Font(new DocumentFormat.OpenXml.Spreadsheet.Bold())), new Fills(new Fill(new PatternFill { PatternType = PatternValues.None }), new Fill(new PatternFill { PatternType = PatternValues.Gray125 })), new Borders(new Border()),
        new CellStyleFormats(new CellFormat()),
        new CellFormats(new CellFormat(), new CellFormat { FontId = 1, ApplyFont = true }, new CellFormat { QuotePrefix = true }));
}
