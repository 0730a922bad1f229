using PlantWatch.Core.Plans;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The strips of a pool over the span, drawn for paper.</summary>
internal static class StripBlock
{
    // Several strips and a table are to fit on a page.
    private const int Width = 1040, Height = 380;

    /// <summary>The picture; a sentence where nothing is measured.</summary>
    public static async Task<Block> MakeAsync(SheetSource source, PoolPlan pool, ISeriesStore series, IRecordStore record, Wording words, CancellationToken cancellation)
    {
        var input = await PoolStrips.InputAsync(source.Worker, pool, new(source.Span.From, source.Span.To, Width, Height, ChartTheme.Print), series, record, words, cancellation);
        if (input.Strips.Count == 0) return new Remark(words.Paper("no_probes", pool.Name));
        var (width, height) = StripChart.SizeOf(input);
        return new StripPicture(scale => StripChart.Png(input, scale), width, height, words.Paper("strip", pool.Name, string.Join(", ", input.Strips.Select(s => s.Name))));
    }
}
