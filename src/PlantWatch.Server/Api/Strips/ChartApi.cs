using PlantWatch.Server.Charts;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The strips of a pool as a picture, for sheets, reports and messages.</summary>
internal static class ChartApi
{
    public static void MapCharts(this RouteGroupBuilder api) =>
        api.MapGet("/charts/pools/{file}", async (
            string file, string from, string to, int? width, int? height, string? theme, string? look, string? compare, PlantHost host, ISeriesStore series, IRecordStore record, HttpContext http, CancellationToken cancellation) =>
        {
            var kind = Path.GetExtension(file);
            if (kind is not (".png" or ".svg")) return Answers.NotFound($"chart {file}; ask for .png or .svg");
            var poolId = Path.GetFileNameWithoutExtension(file);
            if (host.WithPool(poolId) is not { } worker) return Answers.NotFound($"pool {poolId}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var frame = new StripFrame(start, end, width ?? 1200, height ?? 0, theme == "dark" ? ChartTheme.Dark : ChartTheme.Light);
            var pool = worker.State.Plan.Pools.First(p => p.Id == poolId);
            var drawn = await PoolStrips.InputAsync(worker, pool, frame with { Look = LookOf(look), Compared = ComparedOf(compare) }, series, record, Reader.Words, cancellation);
            var notes = await NoteApi.TouchingAsync(poolId, start, end, host, record, cancellation);
            // A picture that is taken away says of which plant it is.
            var input = drawn with { Notes = [.. notes.Where(n => !n.Retracted).Select(n => new NoteMark(n.From, n.To, n.Text))], Title = host.Plan is { Site.Name: { Length: > 0 } plant } ? $"{plant}, {pool.Name}" : pool.Name };
            http.Response.Headers.ContentDisposition = $"inline; filename=\"{ExportApi.AsciiNameOf(host, pool, start, end, input.TimeZone)}{kind}\"";
            return kind == ".png" ? Results.Bytes(StripChart.Png(input), "image/png") : Results.Text(StripChart.Svg(input), "image/svg+xml");
        });

    private static ComparedDay ComparedOf(string? compare) => compare switch { "yesterday" => ComparedDay.Yesterday, "last_week" => ComparedDay.LastWeek, _ => ComparedDay.None };

    private static StripLook LookOf(string? look) => look switch { "raw" => StripLook.Raw, "corrected" => StripLook.Corrected, _ => StripLook.Both };
}
