using System.Net;
using System.Text;
using PlantWatch.Core.Quantities;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>What all pictures have in common: their two forms, their font and how texts are cut to fit.</summary>
internal static class Picture
{
    /// <summary>A picture as PNG.</summary>
    public static byte[] Png(int width, int height, Action<SKCanvas> draw)
    {
        using var surface = SKSurface.Create(new SKImageInfo(width, height));
        draw(surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>A picture as SVG, its title readable to a screen reader.</summary>
    public static string Svg(int width, int height, string title, Action<SKCanvas> draw)
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, width, height), stream)) draw(canvas);
        var svg = Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
        var body = svg.IndexOf('>', svg.IndexOf("<svg", StringComparison.Ordinal)) + 1;
        return svg.Insert(body, $"<title>{WebUtility.HtmlEncode(title)}</title>").Insert(body - 1, " role=\"img\"");
    }

    /// <summary>The font of the pictures.</summary>
    public static SKFont FontOf(float size) => new(ChartFont.Face, size) { Edging = SKFontEdging.Antialias };

    /// <summary>The text, cut with an ellipsis where it is too long.</summary>
    public static string Fitting(string text, SKFont font, float width)
    {
        if (font.MeasureText(text) <= width) return text;
        var length = text.Length;
        while (length > 1 && font.MeasureText(text.AsSpan(0, length).TrimEnd().ToString() + "…") > width) length--;
        return text.AsSpan(0, length).TrimEnd().ToString() + "…";
    }

    /// <summary>The unit as it stands beside an axis; nothing for pH, which has none.</summary>
    public static string UnitOf(Measurand measurand) => measurand.Unit() switch { "degC" => "°C", "uS/cm" => "µS/cm", "pH" => "", var unit => unit };

    /// <summary>A remark in the middle of a panel, on a patch of its own so that no line strikes it through.</summary>
    public static void Remark(SKCanvas canvas, string text, float x, float y, ChartTheme theme, SKFont font)
    {
        using var ink = new SKPaint { Color = theme.Ink.ToSKColor(), IsAntialias = true };
        using var patch = new SKPaint { Color = theme.Panel.ToSKColor() };
        var half = (font.MeasureText(text) / 2) + 8;
        canvas.DrawRect(new(x - half, y - 11, x + half, y + 11), patch);
        canvas.DrawText(text, x, y + 4, SKTextAlign.Center, font, ink);
    }
}
