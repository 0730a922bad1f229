using PlantWatch.Server.Charts;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The strips of a pool as a picture, for sheets, reports and messages.</summary>
internal static class ChartApi
{
    public static void MapCharts(this RouteGroupBuilder api) =>
        api.MapGet("/charts/pools/{file}", async (
            string file, string from, string to, int? width, int? height, string? theme, PlantHost host, ISeriesStore series, IRecordStore record, CancellationToken cancellation) =>
        {
            var kind = Path.GetExtension(file);
            if (kind is not (".png" or ".svg")) return Answers.NotFound($"chart {file}; ask for .png or .svg");
            var poolId = Path.GetFileNameWithoutExtension(file);
            if (host.WithPool(poolId) is not { } worker) return Answers.NotFound($"pool {poolId}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var frame = new StripFrame(start, end, width ?? 1200, height ?? 0, theme == "dark" ? ChartTheme.Dark : ChartTheme.Light);
            var input = await PoolStrips.InputAsync(worker, worker.State.Plan.Pools.First(p => p.Id == poolId), frame, series, record, cancellation);
            return kind == ".png" ? Results.Bytes(StripChart.Png(input), "image/png") : Results.Text(StripChart.Svg(input), "image/svg+xml");
        });
}
