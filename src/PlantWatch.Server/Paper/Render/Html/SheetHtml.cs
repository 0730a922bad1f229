using System.Security.Cryptography;
using System.Text;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Html;

/// <summary>A sheet as a page of its own, for reading and for print: nothing is fetched, nothing runs.</summary>
internal sealed class SheetHtml(Sheet sheet)
{
    private const float PixelsOfPoint = 2;
    private static readonly string Css = Read();
    private readonly StringBuilder _html = new();
    private readonly CellText _cells = new(sheet);

    /// <summary>The page.</summary>
    public static string Write(Sheet sheet) => new SheetHtml(sheet).Write();

    /// <summary>What a browser may do with the page: show it, with this style.</summary>
    public static string Policy(Sheet sheet) =>
        $"default-src 'none'; img-src data:; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Style(sheet))))}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private string Write()
    {
        _html.Append("<!doctype html>\n<html lang=\"").Append(sheet.Words.Language.Code).Append("\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(E(PageWords.Head(sheet))).Append("</title>\n<style>").Append(Style(sheet)).Append("</style>\n</head>\n<body>\n<header><h1>").Append(E(sheet.Title)).Append("</h1><p>")
            .Append(E($"{sheet.Site}: {string.Join(", ", sheet.Pools)}")).Append("</p></header>\n<main>\n");
        foreach (var section in sheet.Sections) Section(section);
        _html.Append("</main>\n<footer>").Append(E(PageWords.Foot(sheet))).Append("</footer>\n</body>\n</html>\n");
        return _html.ToString();
    }

    private void Section(Section section)
    {
        var level = section.Level + 1;
        _html.Append("<section>\n<h").Append(level).Append('>').Append(E(section.Heading)).Append("</h").Append(level).Append(">\n");
        foreach (var block in section.Blocks) Block(block);
        _html.Append("</section>\n");
    }

    private void Block(Block block)
    {
        switch (block)
        {
            case Facts facts: Facts(facts); break;
            case Table table: Table(table); break;
            case Remark remark: _html.Append("<p>").Append(E(remark.Text)).Append("</p>\n"); break;
            case StripPicture strip: Strip(strip); break;
            case Signatures signatures: Signatures(signatures); break;
        }
    }

    private void Facts(Facts facts)
    {
        _html.Append("<dl>\n");
        foreach (var fact in facts.Of) _html.Append("<dt>").Append(E(fact.Name)).Append("</dt><dd>").Append(E(fact.Value)).Append("</dd>\n");
        _html.Append("</dl>\n");
    }

    private void Table(Table table)
    {
        if (table.Rows.Count == 0)
        {
            _html.Append("<p>").Append(E(table.WhenEmpty)).Append("</p>\n");
            return;
        }

        // What scrolls can be reached by the keyboard, and says what it is.
        _html.Append("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"").Append(E(table.Caption)).Append("\"><table>\n<caption>").Append(E(table.Caption)).Append("</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
        {
            _html.Append("<th scope=\"col\"").Append(column.Kind == ColumnKind.Number ? " class=\"n\">" : ">").Append(E(column.Name));
            if (Units.Of(column) is { Length: > 0 } unit) _html.Append("<br><span class=\"u\">").Append(E(unit)).Append("</span>");
            _html.Append("</th>");
        }

        _html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows) Row(table, row);
        _html.Append("</tbody></table></div>\n");
    }

    private void Row(Table table, IReadOnlyList<Cell> row)
    {
        _html.Append("<tr>");
        for (var i = 0; i < row.Count; i++)
        {
            var column = table.Columns[i];
            var tag = i == 0 ? "th scope=\"row\"" : "td";
            _html.Append('<').Append(tag).Append(column.Kind == ColumnKind.Number ? " class=\"n\"" : column.Wide ? " class=\"w\"" : "").Append('>');
            foreach (var line in _cells.Lines(row[i], column)) Line(line);
            _html.Append(i == 0 ? "</th>" : "</td>");
        }

        _html.Append("</tr>\n");
    }

    private void Line(CellLine line)
    {
        var (open, close) = line.Look switch { LineLook.Strong => ("<strong>", "</strong>"), LineLook.Struck => ("<del>", "</del>"), LineLook.Small => ("<small>", "</small>"), _ => ("", "") };
        _html.Append(open).Append(E(line.Text)).Append(close);
    }

    private void Strip(StripPicture strip) => _html.Append("<figure><img alt=\"").Append(E(strip.Describes)).Append("\" width=\"").Append(strip.Width).Append("\" height=\"").Append(strip.Height)
        .Append("\" src=\"data:image/png;base64,").Append(Convert.ToBase64String(strip.Png(PixelsOfPoint))).Append("\"></figure>\n");

    private void Signatures(Signatures signatures)
    {
        _html.Append("<div class=\"sign\">");
        foreach (var line in signatures.For) _html.Append("<div>").Append(E(line)).Append("</div>");
        _html.Append("</div>\n");
    }

    // Page numbers and what every page bears stand in the margins, which only print has.
    private static string Style(Sheet sheet) =>
        $"{Css}@page {{ @top-left {{ content: \"{S(PageWords.Head(sheet))}\"; font-size: 8pt; }} @bottom-left {{ content: \"{S(PageWords.Foot(sheet))}\"; font-size: 7.5pt; }} "
        + $"@bottom-right {{ content: {Numbered(sheet)}; font-size: 8pt; }} }}\n";

    private static string Numbered(Sheet sheet) =>
        "\"" + S(sheet.Words.Find("paper.page_of")).Replace("{0:0}", "\" counter(page) \"", StringComparison.Ordinal).Replace("{1:0}", "\" counter(pages) \"", StringComparison.Ordinal) + "\"";

    // Letters and signs stay as they are; only what has a meaning in the page goes by its name.
    private static string E(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal).Replace("'", "&#39;", StringComparison.Ordinal);

    // A string of a style sheet: what could end it, or the element around it, goes by its number.
    private static string S(string text)
    {
        var safe = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
            if (Rune.IsControl(rune) || rune.Value is '"' or '\\' or '<' or '>' or '&') safe.Append(System.Globalization.CultureInfo.InvariantCulture, $"\\{rune.Value:x} ");
            else safe.Append(rune);
        return safe.ToString();
    }

    private static string Read()
    {
        using var stream = typeof(SheetHtml).Assembly.GetManifestResourceStream("sheet.css") ?? throw new InvalidOperationException("sheet.css is missing from this build");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
