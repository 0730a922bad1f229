using PlantWatch.Core.Quantities;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace PlantWatch.Server.Charts;

/// <summary>What both pictures of compared pairs draw alike: points with their bars, plain lines, axes.</summary>
internal static class PairMarks
{
    // Beyond so many the bars would hide the points.
    private const int Crowded = 60;

    /// <summary>The points; a doubted one is hollow and has the colour of doubt.</summary>
    public static void Points(Plot plot, PairChartInput input, Func<ComparedPair, Coordinates> place, Func<ComparedPair, (double Sideways, double Upwards)> bars)
    {
        foreach (var pair in input.Pairs.OrderBy(p => p.Doubted))
        {
            var (at, (sideways, upwards)) = (place(pair), bars(pair));
            var colour = pair.Doubted ? input.Theme.Suspect : input.Theme.Check;
            var bar = new ErrorBar([at.X], [at.Y], sideways > 0 ? [sideways] : null, sideways > 0 ? [sideways] : null, [upwards], [upwards]);
            plot.Add.Plottable(bar);
            (bar.Color, bar.LineWidth, bar.CapSize) = (colour.WithAlpha(input.Pairs.Count > Crowded ? 0.25 : 0.6), 1f, input.Pairs.Count > Crowded ? 0 : 2);
        }

        foreach (var pair in input.Pairs.OrderBy(p => p.Doubted))
        {
            var at = place(pair);
            var marker = plot.Add.Marker(at.X, at.Y, ShapeOf(pair.Doubted), pair.Doubted ? 9 : input.Pairs.Count > Crowded ? 5 : 6.5f, pair.Doubted ? input.Theme.Suspect : input.Theme.Check);
            marker.MarkerLineWidth = 1.6f;
        }
    }

    /// <summary>What the key says of the points.</summary>
    public static IEnumerable<Legend.Entry> Key(PairChartInput input)
    {
        if (input.Pairs.Any(p => !p.Doubted)) yield return new(input.Words.Find("chart.pair"), Legend.Shape(ShapeOf(false), input.Theme.Check));
        if (input.Pairs.Any(p => p.Doubted)) yield return new(input.Words.Find("chart.suspect_check"), Legend.Shape(ShapeOf(true), input.Theme.Suspect));
    }

    /// <summary>A straight line.</summary>
    public static void Line(Plot plot, double x1, double y1, double x2, double y2, Color colour, float width, LinePattern pattern)
    {
        var line = plot.Add.Line(x1, y1, x2, y2);
        (line.LineColor, line.LineWidth, line.LinePattern) = (colour, width, pattern);
    }

    /// <summary>A band from edge to edge.</summary>
    public static void Band(Plot plot, ValueRange sideways, ValueRange upwards, Color colour)
    {
        var band = plot.Add.Rectangle(sideways.Low, sideways.High, upwards.Low, upwards.High);
        (band.FillColor, band.LineWidth) = (colour, 0);
    }

    /// <summary>The values with a margin, and never so narrow that noise looks like an event; 0 to 1 when there is none.</summary>
    public static ValueRange RangeOf(IEnumerable<double> values, Measurand measurand)
    {
        var all = values.Where(double.IsFinite).ToList();
        if (all.Count == 0) return new(0, 1);
        var (low, high, least) = (all.Min(), all.Max(), StripPanel.LeastSpan(measurand));
        if (high - low < least) (low, high) = ((low + high - least) / 2, (low + high + least) / 2);
        var margin = (high - low) * 0.06;
        return new(low - margin, high + margin);
    }

    /// <summary>Colours, font and ticks.</summary>
    public static void Dress(Plot plot, PairChartInput input, bool isSigned)
    {
        var theme = input.Theme;
        (plot.FigureBackground.Color, plot.DataBackground.Color) = (theme.Paper, theme.Panel);
        plot.Axes.Color(theme.Ink);
        plot.Grid.MajorLineColor = theme.Grid;
        plot.Grid.IsBeneathPlottables = true;
        plot.Font.Set(ChartFont.Name);
        plot.HideLegend();
        plot.Axes.Top.FrameLineStyle.IsVisible = plot.Axes.Right.FrameLineStyle.IsVisible = false;
        plot.Axes.Left.TickLabelStyle.FontSize = plot.Axes.Bottom.TickLabelStyle.FontSize = 12;
        if (input.Pairs.Count == 0)
        {
            plot.Axes.Left.TickGenerator = plot.Axes.Bottom.TickGenerator = new EmptyTickGenerator();
            return;
        }

        plot.Axes.Left.TickGenerator = Ticks(22, v => (isSigned && v > 1e-9 ? "+" : "") + Written(v));
        plot.Axes.Bottom.TickGenerator = Ticks(56, Written);

        string Written(double value) => StripPanel.Written(value, input.Measurand).Replace('-', '\u2212');
    }

    /// <summary>What stands beside an axis, with the unit where there is one.</summary>
    public static string Beside(PairChartInput input, string code)
    {
        var unit = Picture.UnitOf(input.Measurand);
        return unit.Length == 0 ? input.Words.Find(code) : $"{input.Words.Find(code)}, {unit}";
    }

    private static NumericAutomatic Ticks(float apart, Func<double, string> written) =>
        new() { MinimumTickSpacing = apart, MinorTickGenerator = new StripPanel.NoMinor(), LabelFormatter = v => written(Math.Abs(v) < 1e-12 ? 0 : v) };

    private static MarkerShape ShapeOf(bool doubted) => doubted ? MarkerShape.OpenDiamond : MarkerShape.FilledCircle;
}
