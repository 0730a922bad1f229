using System.Globalization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>The two pictures of a probe beside its tests: how far they agree, and by what line one follows the other.</summary>
/// <remarks>Every call makes its own plot; calls may run side by side.</remarks>
internal sealed class PairChart
{
    // Room for the head, the words above and under the panel, and half a label at the ends of the axes.
    private const float Side = 12, Head = 64, Caption = 18, TicksHeight = 22, LeftAxis = 58, Right = 24, Edge = 6;

    private readonly PairChartInput _input;
    private readonly PairPanel _panel;
    private readonly int _width;
    private readonly int _height;

    private PairChart(PairChartInput input, Func<PairChartInput, PairPanel> panel, float shape)
    {
        (_input, _panel) = (input, panel(input));
        using var small = Picture.FontOf(12);
        _width = Math.Clamp(input.Width, 200, 4000);
        var around = Head + (2 * Caption) + KeyHeight(small) + Side;
        var plot = Math.Clamp(_width * shape, 220, 520) + TicksHeight;
        _height = (int)Math.Ceiling(input.Height == 0 ? around + plot : Math.Clamp(input.Height, around + 160, 4000));
    }

    /// <summary>Differences against means, with the mean difference, the limits of agreement and how sure they are.</summary>
    public static PairChart Agreement(PairChartInput input) => new(input, AgreementPanel.Build, 0.5f);

    /// <summary>Tests against the probe, with the lines through them and the line on which both would be equal.</summary>
    public static PairChart Regression(PairChartInput input) => new(input, RegressionPanel.Build, 0.8f);

    /// <summary>As PNG.</summary>
    public byte[] Png() => Picture.Png(_width, _height, Draw);

    /// <summary>As SVG; its title says what it shows.</summary>
    public string Svg() => Picture.Svg(_width, _height, $"{_input.Title}: {_panel.Upwards}. {Counted()} {Days()}".TrimEnd(), Draw);

    private void Draw(SKCanvas canvas)
    {
        canvas.Clear(_input.Theme.Paper.ToSKColor());
        using var ink = new SKPaint { Color = _input.Theme.Ink.ToSKColor(), IsAntialias = true };
        using var small = Picture.FontOf(12);
        using var big = Picture.FontOf(16);
        var room = _width - (2 * Side);
        canvas.DrawText(Picture.Fitting(_input.Title, big, room), Side, 20, SKTextAlign.Left, big, ink);
        canvas.DrawText(Picture.Fitting(Counted(), small, room), Side, 38, SKTextAlign.Left, small, ink);
        canvas.DrawText(Picture.Fitting(Days(), small, room), Side, 54, SKTextAlign.Left, small, ink);
        canvas.DrawText(Picture.Fitting(_panel.Upwards, small, room), Side, Head + 14, SKTextAlign.Left, small, ink);
        var key = KeyHeight(small);
        var plot = _height - Head - (2 * Caption) - key - Side;
        Panel(canvas, Head + Caption, plot, small);
        canvas.DrawText(Picture.Fitting(_panel.Sideways, small, room - LeftAxis), LeftAxis, Head + Caption + plot + 13, SKTextAlign.Left, small, ink);
        Legend.Draw(canvas, _panel.Key, new SKRect(Side, _height - key - (Side / 2), _width - Side, _height), small, _input.Theme);
    }

    private void Panel(SKCanvas canvas, float top, float height, SKFont small)
    {
        canvas.Save();
        canvas.Translate(0, top);
        canvas.ClipRect(new SKRect(0, 0, _width, height));
        _panel.Plot.Layout.Fixed(new ScottPlot.PixelPadding(LeftAxis, Right, TicksHeight, Edge));
        _panel.Plot.Render(canvas, _width, (int)height);
        if (_input.Pairs.Count == 0)
            Picture.Remark(canvas, _input.Words.Find("chart.nothing_compared"), LeftAxis + ((_width - LeftAxis - Right) / 2f), (height - TicksHeight) / 2, _input.Theme, small);
        canvas.Restore();
    }

    private float KeyHeight(SKFont font) => Legend.HeightOf(_panel.Key, _width - (2 * Side), font);

    private string Counted()
    {
        var (all, doubted) = (_input.Pairs.Count, _input.Pairs.Count(p => p.Doubted));
        if (all == 0) return _input.Words.Text(Reason.Of("chart.pairs_none"));
        return _input.Words.Text(doubted == 0 ? Reason.Of("chart.pairs", all) : Reason.Of("chart.pairs_doubted", all, doubted));
    }

    private string Days()
    {
        if (_input.Pairs.Count == 0) return "";
        var (first, last) = (Day(_input.Pairs.Min(p => p.At)), Day(_input.Pairs.Max(p => p.At)));
        return first == last ? first : $"{first} \u2013 {last}";
    }

    private string Day(Instant at) =>
        TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), TimeZoneInfo.FindSystemTimeZoneById(_input.TimeZone)).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
