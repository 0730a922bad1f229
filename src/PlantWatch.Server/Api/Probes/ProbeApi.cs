using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>A probe with its past: whom to believe, what the checks said of it, its calibrations and what is advised.</summary>
internal static class ProbeApi
{
    // A page of the list, and what a curve of the bias can show apart.
    private const int PageLength = 20;
    private const int LongestPage = 200;
    private const int Curve = 500;

    public static void MapProbes(this RouteGroupBuilder api)
    {
        api.MapGet("/probes/{id}", ProbeAsync).Produces<ProbeHistory>();
        api.MapGet("/probes/{id}/judgements", JudgementsAsync).Produces<JudgementPage>().Produces<Problem>(StatusCodes.Status400BadRequest);
    }

    private static async Task<IResult> ProbeAsync(string id, PlantHost host, LivePublisher live, IRecordStore store, CancellationToken cancellation)
    {
        if (host.WithProbe(id) is not { } worker) return Answers.NotFound($"probe {id}");
        var state = worker.State;
        var index = state.Plan.Probes.Select(p => p.Id).ToList().IndexOf(id);
        // A reload may have taken the probe away between two looks.
        if (index < 0 || live.View(worker, Reader.Words).Probes.FirstOrDefault(p => p.Id == id) is not { } now) return Answers.NotFound($"probe {id}");
        var newest = await RowsAsync(store, worker.Partition, id, Instant.Never, Curve, cancellation);
        var (page, older) = await PageAsync(store, worker.Partition, id, newest, PageLength, cancellation);
        var pairs = await PairChartApi.PairsAsync(worker, state.Plan.Probes[index], Instant.Never, Instant.Never, store, cancellation);
        return Answers.Ok(ProbeHistories.Of(state, index, now, newest, page, older) with { Agreement = AgreementViews.Of(pairs) });
    }

    private static async Task<IResult> JudgementsAsync(string id, string? before, int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (host.WithProbe(id) is not { } worker) return Answers.NotFound($"probe {id}");
        if (Times.Open(null, before, out _, out var end) is { }) return Answers.Invalid("before", "field.time");
        var length = Math.Clamp(limit ?? PageLength, 1, LongestPage);
        var rows = await RowsAsync(store, worker.Partition, id, end, length + 1, cancellation);
        var (page, older) = await PageAsync(store, worker.Partition, id, rows, length, cancellation);
        return Answers.Ok(new JudgementPage([.. page.Select(JudgementViews.Of)], older));
    }

    private static async Task<IReadOnlyList<Judged>> RowsAsync(IRecordStore store, PartitionKey partition, string probe, Instant before, int limit, CancellationToken cancellation) =>
        [.. (await store.EntriesAsync(partition, new EntryQuery(["judgement"], probe, Instant.Never, before, limit), cancellation)).Select(r => new Judged(((JudgementEntry)r.Body).Judgement, r.HappenedAt))];

    // Pages are cut by time: checks of one moment stay on one page, so that none falls between two.
    private static async Task<(IReadOnlyList<Judged> Page, Instant? Older)> PageAsync(
        IRecordStore store, PartitionKey partition, string probe, IReadOnlyList<Judged> rows, int length, CancellationToken cancellation)
    {
        if (rows.Count <= length) return (rows, null);
        var last = rows[length - 1].SampledAt;
        var query = new EntryQuery(["judgement"], probe, last, last + TimeSpan.FromMicroseconds(1), LongestPage);
        var same = (await store.EntriesAsync(partition, query, cancellation)).Select(r => new Judged(((JudgementEntry)r.Body).Judgement, r.HappenedAt));
        Judged[] page = [.. rows.TakeWhile(r => r.SampledAt > last), .. same];
        return (page, (await RowsAsync(store, partition, probe, last, 1, cancellation)).Count > 0 ? last : null);
    }
}
