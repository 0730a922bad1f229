using PdfSharp.Drawing;

namespace PlantWatch.Server.Paper.Render.Pdf;

/// <summary>Fonts, greys and measures of a printed page, in points.</summary>
internal sealed class Ink
{
    /// <summary>A4 across.</summary>
    public const double PageWidth = 841.89, PageHeight = 595.28;

    /// <summary>Left and right, above, and below; head and foot of the page stand in the last two.</summary>
    public const double Side = 34, Top = 40, Bottom = 40;

    /// <summary>Width of what stands on a page.</summary>
    public const double Width = PageWidth - (2 * Side);

    /// <summary>Height of a line of a table, and of other text.</summary>
    public const double TableLine = 9.6, TextLine = 12.5;

    public XFont Title { get; } = Of(16, XFontStyleEx.Bold);
    public XFont Heading { get; } = Of(12, XFontStyleEx.Bold);
    public XFont SubHeading { get; } = Of(10, XFontStyleEx.Bold);
    public XFont Text { get; } = Of(9);
    public XFont Cell { get; } = Of(7.5);
    public XFont CellStrong { get; } = Of(7.5, XFontStyleEx.Bold);
    public XFont CellStruck { get; } = Of(7.5, XFontStyleEx.Strikeout);
    public XFont CellSmall { get; } = Of(6.3);
    public XFont Edge { get; } = Of(6.8);

    public static XBrush Black { get; } = new XSolidBrush(XColor.FromArgb(0x11, 0x11, 0x11));
    public static XBrush Soft { get; } = new XSolidBrush(XColor.FromArgb(0x44, 0x44, 0x44));
    public static XBrush Head { get; } = new XSolidBrush(XColor.FromArgb(0xEC, 0xEC, 0xEC));
    public static XPen Hairline { get; } = new(XColor.FromArgb(0xA6, 0xA6, 0xA6), 0.4);
    public static XPen Rule { get; } = new(XColor.FromArgb(0x11, 0x11, 0x11), 0.8);

    /// <summary>Font and grey of a line of a cell.</summary>
    public (XFont Font, XBrush Brush) Of(LineLook look) => look switch
    {
        LineLook.Strong => (CellStrong, Black),
        LineLook.Struck => (CellStruck, Soft),
        LineLook.Small => (CellSmall, Soft),
        _ => (Cell, Black),
    };

    private static XFont Of(double size, XFontStyleEx style = XFontStyleEx.Regular)
    {
        PaperFont.Use();
        return new(PaperFont.Name, size, style);
    }
}
