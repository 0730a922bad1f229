using System.Collections.Immutable;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Series for charts: the right tier for the width, gaps as gaps, raw and corrected side by side.</summary>
internal static class SeriesApi
{
    private const int WidestChart = 4000;

    public static void MapSeries(this RouteGroupBuilder api) =>
        api.MapGet("/series", async (string probe, string from, string to, int? width, PlantHost host, ISeriesStore store, CancellationToken cancellation) =>
        {
            if (host.WithSeries(probe) is not { } worker) return Answers.NotFound($"series {probe}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var answer = await QueryAsync(worker, store, probe, start, end, Math.Clamp(width ?? 800, 1, WidestChart), cancellation);
            return Answers.Ok(View(answer, worker.State));
        }).Produces<SeriesView>();

    public static ValueTask<SeriesAnswer> QueryAsync(
        CircuitWorker worker, ISeriesStore store, string series, Instant from, Instant to, int width, CancellationToken cancellation)
    {
        var expected = worker.State.Plan.Probes.FirstOrDefault(p => p.Id == series)?.Every ?? PumpViews.SilentAfter;
        return store.SeriesAsync(worker.Partition, new SeriesQuery(series, from, to, width, expected), cancellation);
    }

    /// <summary>Raw to corrected by the calibration that held at that time and by what the record was corrected for since; null when there never was either.</summary>
    public static Func<Instant, double, double>? Correction(CircuitState state, string probe)
    {
        ImmutableArray<Calibration> held = [.. state.Calibrations.Where(c => c.ProbeId == probe && CalibrationsInForce.Corrects(c))];
        ImmutableArray<RecordCorrection> layer = [.. state.Corrections.Where(c => c.ProbeId == probe && c.IsInForce)];
        return held.IsEmpty && layer.IsEmpty ? null : (at, raw) => CorrectionLayer.Apply(layer, probe, at, CalibrationsInForce.Correct(held, probe, at, raw)).Value;
    }

    private static SeriesView View(SeriesAnswer answer, CircuitState state)
    {
        var points = answer.Points;
        double? Or(SeriesPoint p, double value) => p.IsGap ? null : value;
        var correct = Correction(state, answer.Series);
        return new SeriesView(
            answer.Series, answer.Tier, [.. points.Select(p => p.At.UnixMilliseconds)],
            [.. points.Select(p => Or(p, p.Min))], [.. points.Select(p => Or(p, p.Mean))], [.. points.Select(p => Or(p, p.Max))],
            correct is null ? null : [.. points.Select(p => p.IsGap ? (double?)null : correct(p.At, p.Mean))]);
    }
}
