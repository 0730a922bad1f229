using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
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
            string file, string from, string to, int? width, int? height, string? theme, PlantHost host, ISeriesStore series, IRecordStore record, CancellationToken cancellation) =>
        {
            var kind = Path.GetExtension(file);
            if (kind is not (".png" or ".svg")) return Answers.NotFound($"chart {file}; ask for .png or .svg");
            var poolId = Path.GetFileNameWithoutExtension(file);
            if (host.WithPool(poolId) is not { } worker) return Answers.NotFound($"pool {poolId}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var frame = new Frame(start, end, width ?? 1200, height ?? 0, theme == "dark" ? ChartTheme.Dark : ChartTheme.Light);
            var input = await InputAsync(worker, worker.State.Plan.Pools.First(p => p.Id == poolId), frame, series, record, cancellation);
            return kind == ".png" ? Results.Bytes(StripChart.Png(input), "image/png") : Results.Text(StripChart.Svg(input), "image/svg+xml");
        });

    private static async Task<StripChartInput> InputAsync(
        CircuitWorker worker, PoolPlan pool, Frame frame, ISeriesStore series, IRecordStore record, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["check"], pool.Id, frame.From, frame.To, 2000), cancellation);
        ManualCheck[] checks = [.. rows.Select(r => r.Body).OfType<CheckEntry>().Select(c => c.Check)];
        var limits = worker.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
        var strips = new List<Strip>();
        foreach (var group in worker.State.Plan.Probes.Where(p => (p.PoolId is null || p.PoolId == pool.Id) && p.Measurand != Measurand.SampleFlow).GroupBy(p => p.Measurand))
        {
            var lines = new List<StripLine>();
            foreach (var probe in group) lines.Add(await LineAsync(worker, probe, frame, series, cancellation));
            var (low, high) = limits.Ends(group.Key);
            strips.Add(new Strip(Wording.English.Find($"name.{Wording.Key(group.Key)}"), group.Key, lines, low, high, [.. Marks(checks, group.Key)]));
        }

        return new StripChartInput
        {
            Title = pool.Name,
            TimeZone = worker.State.Plan.TimeZone,
            From = frame.From,
            To = frame.To,
            Width = frame.Width,
            Height = frame.Height,
            Theme = frame.Theme,
            Strips = strips,
            Words = ChartWords.From(Wording.English.Find),
        };
    }

    private static async Task<StripLine> LineAsync(CircuitWorker worker, ProbePlan probe, Frame frame, ISeriesStore series, CancellationToken cancellation)
    {
        var answer = await SeriesApi.QueryAsync(worker, series, probe.Id, frame.From, frame.To, Math.Clamp(frame.Width, 1, 4000), cancellation);
        var correct = SeriesApi.Correction(worker.State, probe.Id);
        return new StripLine(probe.Name, answer, correct is null ? null : [.. answer.Points.Select(p => p.IsGap ? (double?)null : correct(p.At, p.Mean))]);
    }

    private static IEnumerable<CheckMark> Marks(ManualCheck[] checks, Measurand measurand) =>
        from check in checks
        let result = check.Result(measurand)
        where result is not null
        select new CheckMark(check.SampledAt, result.Value, MethodUncertainty.Of(result).OrNull()?.U ?? 0, result.Censoring, false);

    private sealed record Frame(Instant From, Instant To, int Width, int Height, ChartTheme Theme);
}
