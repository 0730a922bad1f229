using PlantWatch.Core.Readings;
using ScottPlot;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>The key under the strips. It flows into as many rows as the width asks for and lists only what the picture holds.</summary>
internal static class Legend
{
    private const float RowHeight = 20, Sample = 26, Gap = 18;

    /// <summary>A sample and its words.</summary>
    internal sealed record Entry(string Text, Action<SKCanvas, SKRect, SKPaint> Draw);

    public static IReadOnlyList<Entry> Of(StripChartInput input)
    {
        var (theme, words) = (input.Theme, input.Words);
        var lines = input.Strips.SelectMany(s => s.Lines).Where(l => l.Series.Points.Any(p => !p.IsGap)).ToList();
        var checks = input.Strips.SelectMany(s => s.Checks).ToList();
        var isCorrected = lines.Any(l => l.Corrected?.Any(v => v is not null) == true);
        List<Entry> entries = [];
        if (isCorrected) entries.Add(new(words.Corrected, Stroke(theme.Value[0], 2, null)));
        if (lines.Count > 0) entries.Add(new(words.Raw, isCorrected ? Stroke(theme.Raw, 1.3f, [1.5f, 3]) : Stroke(theme.Value[0], 2, null)));
        foreach (var strip in input.Strips.Where(s => s.Lines.Count > 1))
            entries.AddRange(strip.Lines.Select((l, i) => new Entry(l.Name, Stroke(theme.Value[i % theme.Value.Count], 2, DashOf(i)))));
        if (input.OtherDay is { } other && lines.Any(l => l.OtherDay?.Series.Points.Any(p => !p.IsGap) == true)) entries.Add(new(other, Stroke(theme.Raw, 1.3f, [8, 6])));
        if (lines.Any(l => l.Series.Points.Any(p => p.Max > p.Min))) entries.Add(new(words.Envelope, Fill(theme.Envelope)));
        if (input.Strips.Any(s => s.Low is not null || s.High is not null)) entries.Add(new(words.Limits, Stroke(theme.Limit, 1.3f, [6, 4])));
        foreach (var kind in checks.Select(c => (c.Censoring, c.Suspect)).Distinct().Order()) entries.Add(Mark(theme, words, kind.Censoring, kind.Suspect));
        return entries;
    }

    /// <summary>Height of the key at a width.</summary>
    public static float HeightOf(IReadOnlyList<Entry> entries, float width, SKFont font) => entries.Count == 0 ? 0 : (Place(entries, width, font)[^1].Row + 1) * RowHeight;

    public static void Draw(SKCanvas canvas, IReadOnlyList<Entry> entries, SKRect area, SKFont font, ChartTheme theme)
    {
        using var ink = new SKPaint { Color = theme.Ink.ToSKColor(), IsAntialias = true };
        foreach (var (entry, x, row) in Place(entries, area.Width, font))
        {
            var top = area.Top + (row * RowHeight);
            using var paint = new SKPaint { IsAntialias = true };
            entry.Draw(canvas, new(area.Left + x, top, area.Left + x + Sample, top + RowHeight), paint);
            canvas.DrawText(entry.Text, area.Left + x + Sample + 6, top + 14, SKTextAlign.Left, font, ink);
        }
    }

    private static List<(Entry Entry, float X, int Row)> Place(IReadOnlyList<Entry> entries, float width, SKFont font)
    {
        List<(Entry, float, int)> placed = [];
        var (x, row) = (0f, 0);
        foreach (var entry in entries)
        {
            var wide = Sample + 6 + font.MeasureText(entry.Text) + Gap;
            if (x > 0 && x + wide - Gap > width) (x, row) = (0, row + 1);
            placed.Add((entry, x, row));
            x += wide;
        }
        return placed;
    }

    /// <summary>A remark among the entries, without a sample.</summary>
    public static Entry Words(string text) => new(text, (_, _, _) => { });

    /// <summary>A line as the picture shows it.</summary>
    public static Action<SKCanvas, SKRect, SKPaint> Stroke(Color colour, float width, float[]? dash) => (canvas, box, paint) =>
    {
        using var effect = dash is null ? null : SKPathEffect.CreateDash(dash, 0);
        (paint.Color, paint.StrokeWidth, paint.Style, paint.PathEffect) = (colour.ToSKColor(), width, SKPaintStyle.Stroke, effect);
        canvas.DrawLine(box.Left, box.MidY, box.Right, box.MidY, paint);
    };

    private static float[]? DashOf(int number) => (number % 3) switch { 0 => null, 1 => [6, 2], _ => [8, 6] };

    /// <summary>An area as the picture shows it.</summary>
    public static Action<SKCanvas, SKRect, SKPaint> Fill(Color colour) => (canvas, box, paint) =>
    {
        paint.Color = colour.ToSKColor();
        canvas.DrawRect(new(box.Left, box.MidY - 5, box.Right, box.MidY + 5), paint);
    };

    private static Entry Mark(ChartTheme theme, ChartWords words, Censoring censoring, bool suspect)
    {
        var text = censoring switch { Censoring.Below => words.Below, Censoring.Above => words.Above, _ => words.Check };
        if (suspect) text = censoring == Censoring.None ? words.SuspectCheck : $"{words.SuspectCheck}, {text}";
        var shape = StripPanel.ShapeOf(new(default, 0, 0, censoring, suspect));
        var colour = suspect ? theme.Suspect : theme.Check;
        return new(text, Shape(shape, colour));
    }

    /// <summary>A marker as the picture shows it.</summary>
    public static Action<SKCanvas, SKRect, SKPaint> Shape(MarkerShape shape, Color colour) => (canvas, box, paint) =>
    {
        using var scottPaint = Paint.NewDisposablePaint();
        new MarkerStyle(shape, 9, colour) { LineWidth = 1.6f }.Render(canvas, new Pixel(box.MidX, box.MidY), scottPaint);
    };
}
