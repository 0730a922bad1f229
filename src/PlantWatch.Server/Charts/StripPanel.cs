using System.Globalization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace PlantWatch.Server.Charts;

/// <summary>One panel: limits behind, then the envelope, raw, corrected, and the checks on top.</summary>
internal static class StripPanel
{
    public static Plot Build(StripChartInput input, Strip strip, PixelPadding padding, IReadOnlyList<TimeTicks.Label> times, bool withTimes)
    {
        var plot = new Plot();
        var theme = input.Theme;
        var range = ValueRangeOf(strip);
        plot.Axes.SetLimits(0, (input.To - input.From).TotalSeconds, range.Low, range.High);
        Limits(plot, strip, theme, range, (input.To - input.From).TotalSeconds);
        foreach (var line in strip.Lines) Other(plot, line.OtherDay, input.From, theme);
        for (var i = 0; i < strip.Lines.Count; i++) Line(plot, strip.Lines[i], input.From, theme, i);
        foreach (var check in strip.Checks) Check(plot, check, input.From, theme, range);
        Dress(plot, theme, padding, strip.Measurand);
        if (!ValuesOf(strip).Any()) plot.Axes.Left.TickGenerator = new EmptyTickGenerator();
        TimeAxis(plot, input.From, times, withTimes);
        return plot;
    }

    /// <summary>What the panel shows: the data, the limits and the checks with their bars, but never so narrow that noise looks like an event.</summary>
    internal static (double Low, double High) ValueRangeOf(Strip strip)
    {
        var values = ValuesOf(strip).Where(double.IsFinite).ToList();
        if (values.Count == 0) return (0, 1);
        var (low, high) = (values.Min(), values.Max());
        var least = LeastSpan(strip.Measurand);
        if (high - low < least) (low, high) = ((low + high - least) / 2, (low + high + least) / 2);
        var margin = (high - low) * 0.08;
        return (low - margin, high + margin);
    }

    private static IEnumerable<double> ValuesOf(Strip strip)
    {
        foreach (var line in strip.Lines.Concat(strip.Lines.Select(l => l.OtherDay).OfType<StripLine>()))
        {
            foreach (var point in line.Series.Points)
                if (!point.IsGap) { yield return point.Min; yield return point.Max; }
            foreach (var value in line.Corrected ?? [])
                if (value is { } v) yield return v;
        }
        foreach (var check in strip.Checks) { yield return check.Value - check.U; yield return check.Value + check.U; }
        if (strip.Low is { } low) yield return low;
        if (strip.High is { } high) yield return high;
    }

    // Ten times the step that people write the measurand with: a steady pH then looks steady.
    internal static double LeastSpan(Measurand measurand) => measurand == Measurand.Orp ? 50 : 10 * Math.Pow(10, -measurand.Decimals()) * (measurand == Measurand.Ph ? 3 : 1);

    private static void Limits(Plot plot, Strip strip, ChartTheme theme, (double Low, double High) range, double width)
    {
        if (strip.Low is null && strip.High is null) return;
        var (low, high) = (strip.Low ?? range.Low, strip.High ?? range.High);
        var band = plot.Add.Rectangle(0, width, low, high);
        (band.FillColor, band.LineWidth) = (theme.Band, 0);
        foreach (var edge in (double?[])[strip.Low, strip.High])
            if (edge is { } at)
            {
                var line = plot.Add.Line(0, at, width, at);
                (line.LineColor, line.LineWidth, line.LinePattern) = (theme.Limit, 1.2f, LinePattern.Dashed);
            }
    }

    private static void Line(Plot plot, StripLine line, Instant from, ChartTheme theme, int number)
    {
        var (colour, pattern) = (theme.Value[number % theme.Value.Count], PatternOf(number));
        foreach (var run in Runs.Of(line, from))
        {
            if (run.HasEnvelope && run.X.Length > 1)
            {
                var envelope = plot.Add.FillY(run.X, run.Low, run.High);
                (envelope.FillColor, envelope.LineWidth, envelope.MarkerSize) = (theme.Envelope, 0, 0);
            }
            if (run.Corrected is { } corrected)
            {
                Trace(plot, run.X, run.Mean, theme.Raw, 1f, LinePattern.Dotted);
                Trace(plot, run.X, corrected, colour, 1.8f, pattern);
            }
            else Trace(plot, run.X, run.Mean, colour, 1.4f, pattern);
        }
    }

    // Under everything that is of this day, and never its colour.
    private static void Other(Plot plot, StripLine? other, Instant from, ChartTheme theme)
    {
        if (other is null) return;
        foreach (var run in Runs.Of(other, from)) Trace(plot, run.X, run.Corrected ?? run.Mean, theme.Raw, 1.3f, LinePattern.Dashed);
    }

    /// <summary>The second probe of a panel is told from the first by its dashes too.</summary>
    internal static LinePattern PatternOf(int number) => (number % 3) switch { 0 => LinePattern.Solid, 1 => LinePattern.DenselyDashed, _ => LinePattern.Dashed };

    private static void Trace(Plot plot, double[] xs, double[] ys, Color colour, float width, LinePattern pattern)
    {
        if (xs.Length == 1)
        {
            plot.Add.Marker(xs[0], ys[0], MarkerShape.FilledCircle, width * 2.5f, colour);
            return;
        }
        var line = plot.Add.ScatterLine(xs, ys, colour);
        (line.LineWidth, line.LinePattern) = (width, pattern);
    }

    private static void Check(Plot plot, CheckMark check, Instant from, ChartTheme theme, (double Low, double High) range)
    {
        var x = (check.At - from).TotalSeconds;
        var colour = check.Suspect ? theme.Suspect : theme.Check;
        if (check.U > 0 && check.Censoring == Censoring.None)
        {
            var bar = new ScottPlot.Plottables.ErrorBar([x], [check.Value], null, null, [check.U], [check.U]);
            plot.Add.Plottable(bar);
            (bar.Color, bar.LineWidth, bar.CapSize) = (colour, 1.2f, 3);
        }
        var y = Math.Clamp(check.Value, range.Low, range.High);
        var marker = plot.Add.Marker(x, y, ShapeOf(check), check.Suspect ? 11 : 8, colour);
        marker.MarkerLineWidth = 1.6f;
    }

    /// <summary>The shape alone tells: diamond for a number, triangle for below or above; hollow when suspect.</summary>
    internal static MarkerShape ShapeOf(CheckMark check) => (check.Censoring, check.Suspect) switch
    {
        (Censoring.Below, false) => MarkerShape.FilledTriangleDown,
        (Censoring.Below, true) => MarkerShape.OpenTriangleDown,
        (Censoring.Above, false) => MarkerShape.FilledTriangleUp,
        (Censoring.Above, true) => MarkerShape.OpenTriangleUp,
        (_, true) => MarkerShape.OpenDiamond,
        _ => MarkerShape.FilledDiamond,
    };

    private static void Dress(Plot plot, ChartTheme theme, PixelPadding padding, Measurand measurand)
    {
        plot.FigureBackground.Color = theme.Paper;
        plot.DataBackground.Color = theme.Panel;
        plot.Axes.Color(theme.Ink);
        plot.Grid.MajorLineColor = theme.Grid;
        plot.Grid.IsBeneathPlottables = true;
        plot.Font.Set(ChartFont.Name);
        plot.HideLegend();
        plot.Axes.Top.FrameLineStyle.IsVisible = plot.Axes.Right.FrameLineStyle.IsVisible = false;
        plot.Axes.Left.TickGenerator = new NumericAutomatic { MinimumTickSpacing = 22, MinorTickGenerator = new NoMinor(), LabelFormatter = v => Written(v, measurand) };
        plot.Axes.Left.TickLabelStyle.FontSize = plot.Axes.Bottom.TickLabelStyle.FontSize = 12;
        plot.Layout.Fixed(padding);
    }

    // No more decimals than people write, unless the panel is narrower than that.
    internal static string Written(double value, Measurand measurand)
    {
        var text = value.ToString("F" + measurand.Decimals(), CultureInfo.InvariantCulture);
        return Math.Abs(double.Parse(text, CultureInfo.InvariantCulture) - value) < 1e-9 ? text : value.ToString("0.####", CultureInfo.InvariantCulture);
    }

    private static void TimeAxis(Plot plot, Instant from, IReadOnlyList<TimeTicks.Label> times, bool withTimes)
    {
        var ticks = new NumericManual();
        foreach (var time in times) ticks.AddMajor((time.At - from).TotalSeconds, withTimes ? time.Text : "");
        plot.Axes.Bottom.TickGenerator = ticks;
    }

    internal sealed class NoMinor : IMinorTickGenerator
    {
        public IEnumerable<double> GetMinorTicks(double[] majorPositions, CoordinateRange visibleRange) => [];
    }
}
