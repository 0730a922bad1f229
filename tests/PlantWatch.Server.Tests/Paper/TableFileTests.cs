using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Paper.Render.Tables;
using X = DocumentFormat.OpenXml.Spreadsheet;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>Sheets as tables for programs, read back by others' code.</summary>
public sealed class TableFileTests
{
    private static readonly Instant At = Instant.FromUtc(2026, 5, 4, 6, 30);

    private static Sheet Sheet()
    {
        IReadOnlyList<IReadOnlyList<Cell>> rows =
        [
            [new When(At), new Text("=HYPERLINK(\"x\")"), new Number(7.42, "pH") { U = 0.16, Note = "photometer", Was = new Number(7.9, "pH"), Beyond = Beyond.Above }, new Number(-3.5, "mV")],
            [new When(At), new Text("-2+3"), new Dash(), new Number(0.02, "mg/L") { Bound = Censoring.Below }],
            [new When(At), new Text("plain, \"quoted\"\nand two lines"), Blank.Cell, Blank.Cell],
        ];
        return PageBreakTests.SheetOf([]) with
        {
            Span = SheetSpan.Of(new(2026, 5, 4), new(2026, 5, 4), TimeZoneInfo.FindSystemTimeZoneById("Europe/London")),
            Sections = [new("Main pool", [new Table("Tests: [of] Main pool / and more than fits a tab", [new("Sampled", ColumnKind.Time), new("By"), new("pH", ColumnKind.Number, "pH"), new("Any", ColumnKind.Number)], rows, "none"), new Table("Empty", [new("x")], [], "Nothing was tested.")])],
        };
    }

    [Fact]
    public void Comma_separated_values_read_back_as_they_are_and_nothing_is_a_formula()
    {
        var rows = Rows(SheetCsv.Write(Sheet()));
        var head = rows.FindIndex(r => r[0] == "Sampled");
        Assert.Equal(["Sampled", "Sampled, UTC", "By", "pH", "pH, U (k = 2)", "pH, limit", "pH, note", "pH, corrected", "Any, bound", "Any", "Any, unit"], rows[head]);
        // 06:30 UTC is 07:30 in London in May.
        Assert.Equal(["2026-05-04T07:30:00+01:00", "2026-05-04T06:30:00Z", "'=HYPERLINK(\"x\")", "7.42", "0.16", "above", "photometer", "was 7.90", "", "-3.5", "mV"], rows[head + 1]);
        Assert.Equal(["'-2+3", "\u2013", "", "", "", "", "<", "0.02", "mg/L"], rows[head + 2][2..]);
        Assert.Equal("plain, \"quoted\"\nand two lines", rows[head + 3][2].ReplaceLineEndings("\n"));
        Assert.Contains(rows, r => r is [.., "Nothing was tested."]);
    }

    [Fact]
    public void A_workbook_holds_numbers_as_numbers_and_words_as_words_and_is_valid()
    {
        using var file = SpreadsheetDocument.Open(new MemoryStream(SheetXlsx.Write(Sheet())), isEditable: false);
        Assert.Empty(new OpenXmlValidator().Validate(file).Select(e => e.Description));
        var sheets = file.WorkbookPart!.Workbook!.Sheets!.Elements<X.Sheet>().ToArray();
        Assert.Equal(["Day log sheet", "Tests   of  Main pool   and mor"], sheets.Select(s => s.Name!.Value));
        var rows = ((WorksheetPart)file.WorkbookPart.GetPartById(sheets[1].Id!)).Worksheet!.Descendants<X.Row>().Select(r => r.Elements<X.Cell>().ToArray()).ToArray();
        Assert.Equal((X.CellValues.Number, "7.42"), (rows[2][3].DataType!.Value, rows[2][3].CellValue!.Text));
        Assert.Equal((X.CellValues.Number, "-3.5"), (rows[2][9].DataType!.Value, rows[2][9].CellValue!.Text));
        Assert.Equal((X.CellValues.InlineString, "=HYPERLINK(\"x\")", 2u), (rows[2][2].DataType!.Value, rows[2][2].InlineString!.InnerText, rows[2][2].StyleIndex!.Value));
        Assert.Equal(("2026-05-04T07:30:00+01:00", "2026-05-04T06:30:00Z"), (rows[2][0].InlineString!.InnerText, rows[2][1].InlineString!.InnerText));
        Assert.DoesNotContain(rows.SelectMany(r => r), c => c.CellFormula is not null);
    }

    [Fact]
    public void What_is_no_character_of_XML_is_left_out_of_a_workbook_and_the_rest_stays()
    {
        var sheet = PageBreakTests.SheetOf([[new Text("a\uFFFEb\uFFFFc\uD83Dd\uDE00e\u0001f"), new Text("\U0001F600 stays"), Blank.Cell]]);
        using var file = SpreadsheetDocument.Open(new MemoryStream(SheetXlsx.Write(sheet)), isEditable: false);
        var said = file.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet!.Descendants<X.Cell>()).Select(c => c.InlineString?.InnerText).ToArray();
        Assert.Contains("abcdef", said);
        Assert.Contains("\U0001F600 stays", said);
    }

    [Fact]
    public void Names_of_worksheets_are_short_allowed_and_each_once()
    {
        var names = new TabNames();
        Assert.Equal(["Tests", "TESTS 2", "a b c", new string('x', 31), new string('x', 27) + " 2", "-"], new[] { "Tests", "TESTS", "a/b?c", new string('x', 40), new string('x', 35), "[]" }.Select(names.Of));
    }

    internal static List<string[]> Rows(byte[] csv)
    {
        using var reader = new CsvParser(new StringReader(Encoding.UTF8.GetString(csv).TrimStart('\uFEFF')), new CsvConfiguration(CultureInfo.InvariantCulture));
        var rows = new List<string[]>();
        while (reader.Read()) rows.Add([.. reader.Record!]);
        return rows;
    }
}
