using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Statistics;
using ScottPlot;

namespace PlantWatch.Server.Charts;

/// <summary>Test against probe: the line that allows for both errors, the one that no wild test moves, and the one on which both are equal.</summary>
internal static class RegressionPanel
{
    private const double Confidence = 0.95;

    // A slope whose 95 % interval is wider than this says nothing of the probe: the tests span too little beside their own scatter.
    private const double WidestSlope = 1;

    public static PairPanel Build(PairChartInput input)
    {
        XyPoint[] points = [.. input.Believed.Select(p => new XyPoint(p.Probe.Value, p.Test.Value))];
        var (byErrors, byMedian) = (Deming.Of(points, RatioOf(input)), PassingBablok.Of(points));
        var (deming, median) = (byErrors.OrNull is { } d && IsTold(d.SlopeWithin(Confidence)) ? d : null, byMedian.OrNull is { } m && IsTold(m.SlopeWithin) ? m : null);
        var plot = new Plot();
        var range = PairMarks.RangeOf(input.Pairs.SelectMany(p => (double[])[p.Probe.Value, p.Test.Value - p.Test.Expanded, p.Test.Value + p.Test.Expanded]), input.Measurand);
        plot.Axes.SetLimits(range.Low, range.High, range.Low, range.High);
        if (input.Pairs.Count > 0) PairMarks.Line(plot, range.Low, range.Low, range.High, range.High, input.Theme.Limit, 1.2f, LinePattern.Dashed);
        if (deming is not null) Through(plot, points, deming.At, input.Theme.Value[0], LinePattern.Solid);
        if (median is not null) Through(plot, points, median.At, input.Theme.Value[1], LinePattern.DenselyDashed);
        PairMarks.Points(plot, input, p => new(p.Probe.Value, p.Test.Value), p => (p.Probe.Expanded, p.Test.Expanded));
        PairMarks.Dress(plot, input, isSigned: false);
        return new(
            plot, PairMarks.Beside(input, "chart.by_hand"), PairMarks.Beside(input, "chart.by_probe"),
            [.. Key(input, deming, median), .. PairMarks.Key(input), .. Lacking(input, byErrors.Lack, deming is null || median is null)]);
    }

    private static bool IsTold(ValueRange slope) => slope.High - slope.Low <= WidestSlope;

    // Drawn over the probe's own values only: beyond them a line promises what nobody has seen.
    private static void Through(Plot plot, XyPoint[] points, Func<double, double> line, Color colour, LinePattern pattern)
    {
        var (low, high) = (points.Min(p => p.X), points.Max(p => p.X));
        PairMarks.Line(plot, low, line(low), high, line(high), colour, 1.8f, pattern);
    }

    // Error variance of the test over that of the probe, as both state them.
    private static double RatioOf(PairChartInput input)
    {
        var (test, probe) = (0.0, 0.0);
        foreach (var pair in input.Believed)
        {
            test += pair.Test.StandardUncertainty * pair.Test.StandardUncertainty;
            probe += pair.Probe.StandardUncertainty * pair.Probe.StandardUncertainty;
        }

        return test > 0 && probe > 0 ? test / probe : 1;
    }

    private static IEnumerable<Legend.Entry> Key(PairChartInput input, Deming? deming, PassingBablok? median)
    {
        var (theme, words) = (input.Theme, input.Words);
        if (deming is not null)
            yield return new(words.Text(Slope("chart.line_by_errors", deming.Slope, deming.SlopeWithin(Confidence))), Legend.Stroke(theme.Value[0], 2, null));
        if (median is not null)
            yield return new(words.Text(Slope("chart.line_by_median", median.Slope, median.SlopeWithin)), Legend.Stroke(theme.Value[1], 2, [6, 2]));
        if (input.Pairs.Count > 0) yield return new(words.Find("chart.line_of_equality"), Legend.Stroke(theme.Limit, 1.3f, [6, 4]));
    }

    private static Reason Slope(string code, double slope, ValueRange within) => Reason.Of(code, slope, within.Low, within.High);

    private static IEnumerable<Legend.Entry> Lacking(PairChartInput input, Lack lack, bool isUnsure) =>
        input.Pairs.Count == 0 ? []
        : lack == Lack.Nothing ? isUnsure ? [Legend.Words(input.Words.Find("chart.line_not_told"))] : []
        : [Legend.Words(input.Words.Find(lack == Lack.TooFew ? "chart.three_for_line" : "chart.no_line"))];
}
