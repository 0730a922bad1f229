using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>The pages of a document and where the pen stands. What would not fit begins a new one.</summary>
internal sealed class Pages : IDisposable
{
    private readonly PdfDocument _document = new();
    private readonly Ink _ink;
    private readonly XGraphics _measure = XGraphics.CreateMeasureContext(new XSize(Ink.PageWidth, Ink.PageHeight), XGraphicsUnit.Point, XPageDirection.Downwards);

    public Pages(Ink ink)
    {
        _ink = ink;
        Wrap = new(_measure);
        Turn();
    }

    /// <summary>Where text is measured and broken.</summary>
    public Wrapping Wrap { get; }

    /// <summary>The page that is drawn on.</summary>
    public XGraphics On { get; private set; } = null!;

    /// <summary>Where the pen stands.</summary>
    public double Y { get; set; }

    /// <summary>What is left of the page.</summary>
    public double Room => Ink.PageHeight - Ink.Bottom - Y;

    /// <summary>What a whole page holds.</summary>
    public static double Whole => Ink.PageHeight - Ink.Bottom - Ink.Top;

    /// <summary>Begins a new page.</summary>
    public void Turn()
    {
        On?.Dispose();
        var page = _document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(Ink.PageWidth), XUnit.FromPoint(Ink.PageHeight));
        On = XGraphics.FromPdfPage(page);
        Y = Ink.Top;
    }

    /// <summary>Begins a new page where less is left. True when it did.</summary>
    public bool Need(double height)
    {
        if (Room >= height) return false;
        Turn();
        return true;
    }

    /// <summary>Writes text in lines, over pages where it must.</summary>
    public void Write(string text, XFont font, XBrush brush, double lineHeight, double left = Ink.Side, double width = Ink.Width)
    {
        foreach (var line in Wrap.Lines(text, font, width))
        {
            Need(lineHeight);
            On.DrawString(line, font, brush, left, Y + font.Size);
            Y += lineHeight;
        }
    }

    /// <summary>Writes head and foot of every page, now that it is known how many there are, and gives the file.</summary>
    public byte[] Close(Sheet sheet)
    {
        On.Dispose();
        for (var i = 0; i < _document.PageCount; i++)
        {
            using var edge = XGraphics.FromPdfPage(_document.Pages[i], XGraphicsPdfPageOptions.Append);
            edge.DrawString(PageWords.Head(sheet), _ink.Edge, Ink.Soft, Ink.Side, Ink.Top - 14);
            edge.DrawLine(Ink.Hairline, Ink.Side, Ink.PageHeight - Ink.Bottom + 8, Ink.PageWidth - Ink.Side, Ink.PageHeight - Ink.Bottom + 8);
            edge.DrawString(PageWords.Foot(sheet), _ink.Edge, Ink.Soft, Ink.Side, Ink.PageHeight - Ink.Bottom + 18);
            edge.DrawString(PageWords.Page(sheet, i + 1, _document.PageCount), _ink.Edge, Ink.Soft, Ink.PageWidth - Ink.Side, Ink.PageHeight - Ink.Bottom + 18, Right);
        }

        Describe(sheet);
        using var file = new MemoryStream();
        _document.Save(file, false);
        return file.ToArray();
    }

    public void Dispose()
    {
        _measure.Dispose();
        _document.Dispose();
    }

    private static XStringFormat Right { get; } = new() { Alignment = XStringAlignment.Far, LineAlignment = XLineAlignment.BaseLine };

    private void Describe(Sheet sheet)
    {
        (_document.Info.Title, _document.Info.Author, _document.Info.Creator) = (PageWords.Head(sheet), sheet.Site, "PlantWatch");
        _document.Info.CreationDate = sheet.Stamp.PrintedAt.ToDateTimeOffset().UtcDateTime;
        _document.Language = sheet.Words.Language.Code;
    }
}
