using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Statistics;
using ScottPlot;

namespace PlantWatch.Server.Charts;

/// <summary>Probe less test against the mean of both: the bias, and between which limits nearly all differences lie.</summary>
internal static class AgreementPanel
{
    private const double Confidence = 0.95;

    public static PairPanel Build(PairChartInput input)
    {
        var found = Agreement.Of([.. input.Believed.Select(p => p.Difference)]);
        var plot = new Plot();
        var sideways = PairMarks.RangeOf(input.Pairs.Select(p => p.Mean), input.Measurand);
        var upwards = UpwardsOf(input, found.OrNull);
        plot.Axes.SetLimits(sideways.Low, sideways.High, upwards.Low, upwards.High);
        if (found.OrNull is { } agreement) Lines(plot, input.Theme, agreement, sideways);
        if (input.Pairs.Count > 0) PairMarks.Line(plot, sideways.Low, 0, sideways.High, 0, input.Theme.Raw, 1, LinePattern.Dotted);
        PairMarks.Points(plot, input, p => new(p.Mean, p.Difference), p => (0, p.DifferenceU));
        PairMarks.Dress(plot, input, isSigned: true);
        return new(
            plot, PairMarks.Beside(input, "chart.difference"), PairMarks.Beside(input, "chart.mean_of_both"),
            [.. Key(input, found.OrNull), .. PairMarks.Key(input), .. Lacking(input, found.Lack)]);
    }

    private static void Lines(Plot plot, ChartTheme theme, Agreement agreement, ValueRange sideways)
    {
        PairMarks.Band(plot, sideways, agreement.BiasWithin(Confidence), theme.Envelope);
        foreach (var (limit, within) in ((double, ValueRange)[])[(agreement.Low, agreement.LowWithin(Confidence)), (agreement.High, agreement.HighWithin(Confidence))])
        {
            PairMarks.Band(plot, sideways, within, theme.Limit.WithAlpha(0.16));
            PairMarks.Line(plot, sideways.Low, limit, sideways.High, limit, theme.Limit, 1.4f, LinePattern.Dashed);
        }

        PairMarks.Line(plot, sideways.Low, agreement.Bias, sideways.High, agreement.Bias, theme.Value[0], 1.8f, LinePattern.Solid);
    }

    // Points and limits whole; of the limits' own intervals, which three pairs make endless, no more than half as much again.
    private static ValueRange UpwardsOf(PairChartInput input, Agreement? agreement)
    {
        var values = input.Pairs.SelectMany(p => (double[])[p.Difference - p.DifferenceU, p.Difference + p.DifferenceU]).ToList();
        if (values.Count > 0) values.Add(0);
        if (agreement is not null) values.AddRange([agreement.Low, agreement.High]);
        var range = PairMarks.RangeOf(values, input.Measurand);
        if (agreement is null) return range;
        var more = (range.High - range.Low) / 4;
        return new(
            Math.Min(range.Low, Math.Max(range.Low - more, agreement.LowWithin(Confidence).Low)),
            Math.Max(range.High, Math.Min(range.High + more, agreement.HighWithin(Confidence).High)));
    }

    private static IEnumerable<Legend.Entry> Key(PairChartInput input, Agreement? agreement)
    {
        if (agreement is null) yield break;
        var unit = input.Measurand.Unit();
        var within = agreement.BiasWithin(Confidence);
        var theme = input.Theme;
        yield return new(input.Words.Text(Reason.Of("chart.bias", agreement.Bias, within.Low, within.High, unit)), Legend.Stroke(theme.Value[0], 2, null));
        yield return new(input.Words.Text(Reason.Of("chart.limits_of_agreement", agreement.Low, agreement.High, unit)), Legend.Stroke(theme.Limit, 1.4f, [6, 4]));
        yield return new(input.Words.Find("chart.intervals"), Legend.Fill(theme.Limit.WithAlpha(0.3)));
    }

    private static IEnumerable<Legend.Entry> Lacking(PairChartInput input, Lack lack) =>
        lack == Lack.Nothing || input.Pairs.Count == 0 ? [] : [Legend.Words(input.Words.Find(lack == Lack.TooFew ? "chart.three_for_limits" : "chart.differences_alike"))];
}
