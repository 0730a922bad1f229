using PdfSharp.Drawing;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>A sheet as a file for print: A4 across, text as text, pictures of lines beside it.</summary>
internal sealed class SheetPdf : IDisposable
{
    private const float PixelsOfPoint = 2;
    private readonly Sheet _sheet;
    private readonly Ink _ink = new();
    private readonly Pages _pages;
    private readonly CellText _cells;

    private SheetPdf(Sheet sheet)
    {
        (_sheet, _cells) = (sheet, new(sheet));
        _pages = new(_ink);
    }

    /// <summary>The file.</summary>
    public static byte[] Write(Sheet sheet)
    {
        using var pdf = new SheetPdf(sheet);
        return pdf.Write();
    }

    public void Dispose() => _pages.Dispose();

    private byte[] Write()
    {
        _pages.Write(_sheet.Title, _ink.Title, Ink.Black, 22);
        _pages.Write($"{_sheet.Site}: {string.Join(", ", _sheet.Pools)}", _ink.Text, Ink.Black, Ink.TextLine);
        foreach (var section in _sheet.Sections) Section(section);
        return _pages.Close(_sheet);
    }

    private void Section(Section section)
    {
        // A heading never stands alone at the foot of a page.
        _pages.Need(76);
        var first = section.Level == 1;
        _pages.Y += first ? 12 : 6;
        _pages.Write(section.Heading, first ? _ink.Heading : _ink.SubHeading, Ink.Black, first ? 17 : 14);
        if (first) _pages.On.DrawLine(Ink.Rule, Ink.Side, _pages.Y - 2, Ink.PageWidth - Ink.Side, _pages.Y - 2);
        _pages.Y += 3;
        foreach (var block in section.Blocks) Block(block);
    }

    private void Block(Block block)
    {
        switch (block)
        {
            case Facts facts: Facts(facts); break;
            case Table { Rows.Count: 0 } empty: Sentence(empty.WhenEmpty); break;
            case Table table: new PdfTable(table, _cells, _ink, _pages).Draw(); break;
            case Remark remark: Sentence(remark.Text); break;
            case StripPicture strip: Strip(strip); break;
            case Signatures signatures: Signatures(signatures); break;
        }
    }

    private void Sentence(string text)
    {
        _pages.Write(text, _ink.Text, Ink.Black, Ink.TextLine);
        _pages.Y += 4;
    }

    private void Facts(Facts facts)
    {
        var names = facts.Of.Max(f => _pages.Wrap.Of(f.Name, _ink.Text)) + 12;
        foreach (var fact in facts.Of)
        {
            _pages.Need(Ink.TextLine);
            _pages.On.DrawString(fact.Name, _ink.Text, Ink.Soft, Ink.Side, _pages.Y + _ink.Text.Size);
            _pages.Write(fact.Value, _ink.Text, Ink.Black, Ink.TextLine, Ink.Side + names, Ink.Width - names);
        }

        _pages.Y += 4;
    }

    private void Strip(StripPicture strip)
    {
        var shrunk = Math.Min(Ink.Width / strip.Width, Pages.Whole / strip.Height);
        var (width, height) = (strip.Width * shrunk, strip.Height * shrunk);
        _pages.Need(height);
        using var bytes = new MemoryStream(strip.Png(PixelsOfPoint));
        using var image = XImage.FromStream(bytes);
        _pages.On.DrawImage(image, Ink.Side, _pages.Y, width, height);
        _pages.Y += height + 8;
    }

    private void Signatures(Signatures signatures)
    {
        const double Between = 24, Room = 46;
        _pages.Need(Room + (2 * Ink.TextLine));
        var width = (Ink.Width - (Between * (signatures.For.Count - 1))) / signatures.For.Count;
        var y = _pages.Y + Room;
        for (var i = 0; i < signatures.For.Count; i++)
        {
            var left = Ink.Side + (i * (width + Between));
            _pages.On.DrawLine(Ink.Rule, left, y, left + width, y);
            _pages.On.DrawString(signatures.For[i], _ink.Edge, Ink.Soft, left, y + 10);
        }

        _pages.Y = y + (2 * Ink.TextLine);
    }
}
