using System.Globalization;
using PlantWatch.Core.Quantities;
using ScottPlot;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>Draws the strips of a pool, the same ones that the screens show, for sheets, reports and messages.</summary>
/// <remarks>Every call makes its own plots, since one plot must not be shared between threads; calls may run side by side.</remarks>
internal static class StripChart
{
    // Right and Edge leave room for half a label at the ends of the axes.
    private const float Side = 12, Head = 46, PanelTitle = 16, TimesHeight = 24, LeftAxis = 52, Right = 24, Edge = 6, Between = 4, PanelHeight = 140, LeastPanel = 54;

    /// <summary>The picture as PNG, so many pixels for each point: paper wants more than a screen.</summary>
    public static byte[] Png(StripChartInput input, float scale = 1)
    {
        var (width, height) = SizeOf(input);
        return Picture.Png((int)(width * scale), (int)(height * scale), canvas =>
        {
            canvas.Scale(scale);
            Draw(canvas, input, width, height);
        });
    }

    /// <summary>The picture as SVG, its title readable to a screen reader.</summary>
    public static string Svg(StripChartInput input)
    {
        var (width, height) = SizeOf(input);
        return Picture.Svg(width, height, $"{input.Title}, {Span(input)}", canvas => Draw(canvas, input, width, height));
    }

    /// <summary>Width as asked for, within reason; height as asked for, but never less than the strips need to be read.</summary>
    internal static (int Width, int Height) SizeOf(StripChartInput input)
    {
        if (input.To <= input.From) throw new ArgumentException("the picture ends before it begins", nameof(input));
        var width = Math.Clamp(input.Width, 200, 4000);
        var fixedPart = FixedHeight(input, width);
        var count = Math.Max(1, input.Strips.Count);
        var height = input.Height == 0 ? fixedPart + (count * PanelHeight) : Math.Clamp(input.Height, fixedPart + (count * LeastPanel), 4000);
        return (width, (int)Math.Ceiling(height));
    }

    private static float FixedHeight(StripChartInput input, int width)
    {
        using var font = Picture.FontOf(12);
        var count = Math.Max(1, input.Strips.Count);
        return Head + NoteBars.HeightOf(input, width - LeftAxis - Right) + (count * (PanelTitle + Between)) + TimesHeight + Legend.HeightOf(Legend.Of(input), width - (2 * Side), font) + Side;
    }

    private static void Draw(SKCanvas canvas, StripChartInput input, int width, int height)
    {
        canvas.Clear(input.Theme.Paper.ToSKColor());
        using var ink = new SKPaint { Color = input.Theme.Ink.ToSKColor(), IsAntialias = true };
        using var small = Picture.FontOf(12);
        Header(canvas, input, width, ink, small);
        var count = Math.Max(1, input.Strips.Count);
        var panel = (height - FixedHeight(input, width)) / count;
        var zone = TimeZoneInfo.FindSystemTimeZoneById(input.TimeZone);
        var times = TimeTicks.Between(input.From, input.To, zone, (int)((width - LeftAxis - Right) / 62));
        NoteBars.Draw(canvas, input, LeftAxis, Head, width - LeftAxis - Right, small);
        var top = Head + NoteBars.HeightOf(input, width - LeftAxis - Right);
        for (var i = 0; i < input.Strips.Count; i++)
        {
            var last = i == input.Strips.Count - 1;
            Panel(canvas, input, input.Strips[i], times, new SKRect(0, top, width, top + PanelTitle + panel + (last ? TimesHeight : 0)), last, ink, small);
            top += PanelTitle + panel + Between;
        }
        if (input.Strips.Count == 0) Picture.Remark(canvas, input.Words.NoData, width / 2f, Head + 40, input.Theme, small);
        var entries = Legend.Of(input);
        var key = Legend.HeightOf(entries, width - (2 * Side), small);
        Legend.Draw(canvas, entries, new SKRect(Side, height - key - (Side / 2), width - Side, height), small, input.Theme);
    }

    private static void Header(SKCanvas canvas, StripChartInput input, int width, SKPaint ink, SKFont small)
    {
        using var big = Picture.FontOf(16);
        canvas.DrawText(Picture.Fitting(input.Title, big, width - (2 * Side)), Side, 20, SKTextAlign.Left, big, ink);
        canvas.DrawText(Picture.Fitting(Span(input), small, width - (2 * Side)), Side, 38, SKTextAlign.Left, small, ink);
    }

    private static void Panel(SKCanvas canvas, StripChartInput input, Strip strip, IReadOnlyList<TimeTicks.Label> times, SKRect area, bool last, SKPaint ink, SKFont small)
    {
        var unit = Picture.UnitOf(strip.Measurand);
        canvas.DrawText(Picture.Fitting(unit.Length == 0 ? strip.Name : $"{strip.Name}, {unit}", small, area.Width - (2 * Side)), Side, area.Top + 13, SKTextAlign.Left, small, ink);
        var padding = new PixelPadding(LeftAxis, Right, last ? TimesHeight : Edge, Edge);
        var plot = StripPanel.Build(input, strip, padding, times, last);
        var (width, height) = ((int)area.Width, (int)(area.Height - PanelTitle));
        canvas.Save();
        canvas.Translate(0, area.Top + PanelTitle);
        canvas.ClipRect(new SKRect(0, 0, width, height));
        plot.Render(canvas, width, height);
        if (strip.Checks.Count == 0 && strip.Lines.All(l => l.Series.Points.All(p => p.IsGap)))
            Picture.Remark(canvas, input.Words.NoData, LeftAxis + ((width - LeftAxis - Right) / 2f), (height - padding.Bottom) / 2, input.Theme, small);
        canvas.Restore();
    }

    private static string Span(StripChartInput input)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(input.TimeZone);
        string Local(Instant at) => TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return $"{Local(input.From)} \u2013 {Local(input.To)} {input.TimeZone}";
    }
}
