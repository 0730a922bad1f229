using PlantWatch.Core.Quantities;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>Notes over the strips, each from where its time begins to where it ends, with as much of its words as there is room for.</summary>
internal static class NoteBars
{
    private const float Row = 18, Least = 20, Inside = 4;
    private const int Rows = 3;

    /// <summary>How high they are together; 0 where there are none.</summary>
    public static float HeightOf(StripChartInput input, float width) => Place(input, width) is { Count: > 0 } bars ? ((bars.Max(b => b.Row) + 1) * Row) + Inside : 0;

    /// <summary>Draws them between the ends of the time axis.</summary>
    public static void Draw(SKCanvas canvas, StripChartInput input, float left, float top, float width, SKFont font)
    {
        using var edge = new SKPaint { Color = input.Theme.Raw.ToSKColor(), Style = SKPaintStyle.Stroke, IsAntialias = true };
        using var fill = new SKPaint { Color = input.Theme.Band.ToSKColor() };
        using var ink = new SKPaint { Color = input.Theme.Ink.ToSKColor(), IsAntialias = true };
        foreach (var (note, from, to, row) in Place(input, width))
        {
            var box = new SKRect(left + from, top + (row * Row), left + to, top + (row * Row) + Row - 3);
            canvas.DrawRect(box, fill);
            canvas.DrawRect(box, edge);
            canvas.DrawText(Picture.Fitting(note.Text, font, box.Width - (2 * Inside)), box.Left + Inside, box.Bottom - 4, SKTextAlign.Left, font, ink);
        }
    }

    // What does not find room in the rows is on the page and in its list.
    private static List<(NoteMark Note, float From, float To, int Row)> Place(StripChartInput input, float width)
    {
        List<(NoteMark, float, float, int)> placed = [];
        var ends = new float[Rows];
        foreach (var note in input.Notes.Where(n => n.To >= input.From && n.From <= input.To).OrderBy(n => n.From))
        {
            var to = Math.Min(width, At(input, note.To, width));
            var from = Math.Min(Math.Max(0, At(input, note.From, width)), width - Least);
            to = Math.Max(to, from + Least);
            var row = Array.FindIndex(ends, end => end <= from);
            if (row < 0) continue;
            ends[row] = to + 2;
            placed.Add((note, from, to, row));
        }

        return placed;
    }

    private static float At(StripChartInput input, Instant at, float width) => (float)((at - input.From) / (input.To - input.From) * width);
}
