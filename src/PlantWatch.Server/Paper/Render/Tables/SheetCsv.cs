using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Render.Tables;

/// <summary>A sheet as comma-separated values (RFC 4180): table after table, each under its section and caption, an empty line between them.</summary>
internal static class SheetCsv
{
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture) { NewLine = "\r\n" };

    /// <summary>The file, UTF-8 with a byte-order mark, as spreadsheets want it.</summary>
    public static byte[] Write(Sheet sheet)
    {
        using var bytes = new MemoryStream();
        using (var writer = new CsvWriter(new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true), Format))
        {
            Row(writer, [PageWords.Head(sheet), PageWords.Foot(sheet)]);
            foreach (var section in sheet.Sections)
                foreach (var block in section.Blocks) Block(writer, sheet, section, block);
        }

        return bytes.ToArray();
    }

    private static void Block(CsvWriter writer, Sheet sheet, Section section, Block block)
    {
        switch (block)
        {
            case Facts facts:
                Head(writer, section.Heading);
                foreach (var fact in facts.Of) Row(writer, [fact.Name, fact.Value]);
                break;
            case Table { Rows.Count: 0 } empty:
                Head(writer, section.Heading, empty.Caption, empty.WhenEmpty);
                break;
            case Table table:
                Head(writer, section.Heading, table.Caption);
                var grid = Grid.Of(table, sheet);
                Row(writer, grid.Heads);
                foreach (var row in grid.Rows) Row(writer, row);
                break;
            case Remark remark:
                Head(writer, section.Heading, remark.Text);
                break;
        }
    }

    private static void Head(CsvWriter writer, params IReadOnlyList<string> parts)
    {
        writer.NextRecord();
        Row(writer, parts);
    }

    private static void Row(CsvWriter writer, IEnumerable<object?> fields)
    {
        foreach (var field in fields) writer.WriteField(field switch { double number => number.ToString("R", CultureInfo.InvariantCulture), string text => SafeText.Of(text), _ => "" });
        writer.NextRecord();
    }
}
