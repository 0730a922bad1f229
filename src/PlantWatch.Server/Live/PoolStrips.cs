using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Live;

/// <summary>From when to when a picture shows, and how large it is.</summary>
internal sealed record StripFrame(Instant From, Instant To, int Width, int Height, ChartTheme Theme);

/// <summary>The strips of a pool as they lie in the record, ready to be drawn.</summary>
internal static class PoolStrips
{
    /// <summary>Gathers what a picture of a pool needs.</summary>
    /// <param name="worker">The circuit.</param>
    /// <param name="pool">One of its pools.</param>
    /// <param name="frame">From when to when, and how large.</param>
    /// <param name="series">The readings.</param>
    /// <param name="record">The tests.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <param name="only">The one quantity to draw; null for all.</param>
    public static async Task<StripChartInput> InputAsync(
        CircuitWorker worker, PoolPlan pool, StripFrame frame, ISeriesStore series, IRecordStore record, CancellationToken cancellation, Measurand? only = null)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["check"], pool.Id, frame.From, frame.To, 2000), cancellation);
        ManualCheck[] checks = [.. rows.Select(r => r.Body).OfType<CheckEntry>().Select(c => c.Check)];
        var limits = worker.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
        var strips = new List<Strip>();
        foreach (var group in worker.State.Plan.Probes.Where(p => (p.PoolId is null || p.PoolId == pool.Id) && p.Measurand != Measurand.SampleFlow && (only is null || p.Measurand == only)).GroupBy(p => p.Measurand))
        {
            var lines = new List<StripLine>();
            foreach (var probe in group) lines.Add(await LineAsync(worker, probe, frame, series, cancellation));
            var (low, high) = limits.Ends(group.Key);
            strips.Add(new Strip(Reader.Words.Find($"name.{Wording.Key(group.Key)}"), group.Key, lines, low, high, [.. Marks(checks, group.Key)]));
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
            Words = ChartWords.From(Reader.Words.Find),
        };
    }

    private static async Task<StripLine> LineAsync(CircuitWorker worker, ProbePlan probe, StripFrame frame, ISeriesStore series, CancellationToken cancellation)
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
}
