using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The record of a probe as read and as corrected, and how good each day of it is.</summary>
internal static class ProbeRecordApi
{
    private static readonly TimeSpan QuarterHour = TimeSpan.FromMinutes(15);
    private static readonly TimeSpan LongestByQuarterHours = TimeSpan.FromDays(100);

    public static void MapProbeRecord(this RouteGroupBuilder api)
    {
        api.MapGet("/probes/{id}/record", RecordAsync).Produces<ProbeRecordView>();
        api.MapGet("/probes/{id}/quality", async (string id, string from, string to, PlantHost host, ISeriesStore series, IRecordStore record, CancellationToken cancellation) =>
        {
            if (host.WithProbe(id) is not { } worker || worker.State.Plan.Probes.FirstOrDefault(p => p.Id == id) is not { } probe) return Answers.NotFound($"probe {id}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            return Answers.Ok(await new QualityReader(worker, probe, series, record, Reader.Words).DaysAsync(start, end, cancellation));
        }).Produces<IReadOnlyList<DayQualityView>>();
    }

    private static async Task<IResult> RecordAsync(
        string id, string from, string to, string? show, string? tier, PlantHost host, ISeriesStore store, CancellationToken cancellation)
    {
        if (host.WithProbe(id) is not { } worker || worker.State is not { } state || state.Plan.Probes.FirstOrDefault(p => p.Id == id) is not { } probe) return Answers.NotFound($"probe {id}");
        if (Times.Range(from, to, out var start, out var end) is { } no) return no;
        if ((show ??= "both") is not ("raw" or "corrected" or "both")) return Answers.Invalid("show", "record.show");
        var isLong = end - start > LongestByQuarterHours;
        if ((tier ??= isLong ? "day" : "quarter_hour") is not ("day" or "quarter_hour")) return Answers.Invalid("tier", "record.tier");
        if (tier == "quarter_hour" && isLong) return Answers.Invalid("tier", "record.too_long_for_quarter_hours");
        var width = Math.Max(1, (int)((end - start) / (tier == "day" ? TimeSpan.FromDays(1) : QuarterHour)));
        var pixel = (end - start) / width;
        var answer = await SeriesApi.QueryAsync(worker, store, id, start, end, width, cancellation);
        // A correction grows while a point lasts: the middle of the point stands for it, or of what the range holds of it.
        // Several of a tier may be drawn as one.
        var span = SpanOf(answer.Tier) is var one && one > pixel ? one : pixel;
        Instant Middle(Instant at) => at + ((Instant.Earlier(at + span, end) - at) / 2);
        CorrectedValue?[] corrected = [.. answer.Points.Select(p => p.IsGap ? (CorrectedValue?)null
            : CorrectionLayer.Apply(state.Corrections, id, Middle(p.At), CalibrationsInForce.Correct(state.Calibrations, id, Middle(p.At), p.Mean)))];
        var (asRead, asCorrected) = (show != "corrected", show != "raw");
        return Answers.Ok(new ProbeRecordView(
            id, probe.Measurand.Unit(), answer.Tier, [.. answer.Points.Select(p => p.At)],
            asRead ? [.. answer.Points.Select(p => p.IsGap ? (double?)null : p.Mean)] : null,
            asCorrected ? [.. corrected.Select(c => c?.Value)] : null, asCorrected ? [.. corrected.Select(c => 2 * c?.U)] : null,
            [.. answer.Points.Select(p => p.IsGap ? (double?)null : (double)p.Good / p.Count)],
            [.. state.Corrections.Where(c => c.ProbeId == id && c.IsInForce && c.From < end && start < c.To).OrderBy(c => c.From).Select(CorrectionApi.View)]));
    }

    private static TimeSpan SpanOf(Tier tier) => tier switch
    {
        Tier.Minute => TimeSpan.FromMinutes(1),
        Tier.QuarterHour => QuarterHour,
        Tier.Hour => TimeSpan.FromHours(1),
        Tier.Day => TimeSpan.FromDays(1),
        _ => TimeSpan.Zero,
    };
}
