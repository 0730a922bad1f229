using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Hosting;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.WhatIf;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What would have been under other limits: history replayed in the background. Nothing is recorded, and the plan stays as it is.</summary>
internal static class WhatIfLimitApi
{
    /// <summary>Longer than the months that are reported: what is older says little of the plant as it is.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromDays(92);

    public static void MapWhatIfLimits(this RouteGroupBuilder api)
    {
        api.MapGet("/what-if/limits", ChoicesAsync).Produces<WhatIfLimitsChoices>();
        api.MapPost("/what-if/limits", AskAsync).Produces<WhatIfLimitsRun>(StatusCodes.Status202Accepted).Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status429TooManyRequests);
        api.MapGet("/what-if/limits/{id:guid}", (Guid id, LimitRuns runs) => runs.Find(id) is { } run ? View(run, runs) : NotFound(id)).Produces<WhatIfLimitsRun>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapDelete("/what-if/limits/{id:guid}", Cancel).Produces<WhatIfLimitsRun>().Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> ChoicesAsync(PlantHost host, IRecordStore store, ISeriesStore series, TimeProvider clock, CancellationToken cancellation)
    {
        var begins = Instant.Never;
        CircuitWorker[] workers = [.. host.Circuits];
        foreach (var worker in workers)
        {
            var first = (await store.EntriesAsync(worker.Partition, new EntryQuery(["plan"], Limit: int.MaxValue), cancellation)).Select(e => e.At).DefaultIfEmpty(Instant.Never).Min();
            begins = begins.IsSet ? Instant.Earlier(begins, first) : first;
        }

        begins = Instant.Later(begins, await RawFromAsync(host, series, cancellation));
        return Answers.Ok(new WhatIfLimitsChoices(
            begins.IsSet ? begins : null, Instant.From(clock.GetUtcNow()), Longest.TotalDays, [.. host.Plan?.People.Where(p => p.MaySetLimits).Select(p => p.Name) ?? []],
            [.. workers.SelectMany(w => WhatIfLimitChoices.Of(w.State, Reader.Words))]));
    }

    private static async Task<IResult> AskAsync(WhatIfLimitsRequest request, PlantHost host, ISeriesStore series, PlantWatchOptions options, LimitRuns runs, TimeProvider clock, CancellationToken cancellation)
    {
        var inForce = LastGoodPlan.PathIn(options.Data);
        if (host.Plan is not { } plan || !File.Exists(inForce)) return Answers.Invalid("", "what_if.no_plan");
        if (Times(request, Instant.From(clock.GetUtcNow()), out var from, out var to) is { } wrong) return wrong;
        if (await RawFromAsync(host, series, cancellation) is { IsSet: true } gone && from < gone)
            return Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", [Reader.Words.Say(new Core.Readings.FieldRemark("from", Core.Reasons.Reason.Of("what_if.raw_gone", gone.ToString())))]);
        if (Bounds.OfList("changes", request.Changes ?? [], WhatIfLimitRequests.Most) is { } tooMany) return tooMany;
        if (!WhatIfLimitRequests.TryRead(request.Changes ?? [], host, Reader.Words, out var changes, out var errors)) return Objected(errors);
        var changed = ChangedPlan.Of(File.ReadAllText(inForce), LastGoodPlan.Source(options.Data).Understand().Packs, changes);
        if (changed.Plan is not { } other) return Objected([.. changed.Errors.Select(e => new FieldSaid(e.Key, "plant_file", e.Message))]);
        return runs.Ask(from, to, changes, plan, other) is { } run
            ? Results.Json(WhatIfLimitViews.Of(run, runs.Ahead(run), Reader.Words), PlantJson.Options, statusCode: StatusCodes.Status202Accepted)
            : Answers.Problem(StatusCodes.Status429TooManyRequests, "Not now", [new("", "what_if.too_many_runs", Reader.Words.Find("what_if.too_many_runs"))]);
    }

    // Without its single readings a time cannot be replayed.
    private static async Task<Instant> RawFromAsync(PlantHost host, ISeriesStore series, CancellationToken cancellation)
    {
        var latest = Instant.Never;
        foreach (var worker in host.Circuits.ToArray()) latest = Instant.Later(latest, await series.RawFromAsync(worker.Partition, null, cancellation));
        return latest;
    }

    private static IResult Cancel(Guid id, LimitRuns runs)
    {
        if (runs.Find(id) is not { } run) return NotFound(id);
        run.Cancel();
        return View(run, runs);
    }

    private static IResult? Times(WhatIfLimitsRequest request, Instant now, out Instant from, out Instant to)
    {
        (from, to) = (request.From, request.To.IsSet ? Instant.Earlier(request.To, now) : now);
        if (!from.IsSet || !Api.Times.IsReckonable(from) || from >= to) return Answers.Invalid("from", "what_if.from");
        return to - from > Longest ? Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", [Reader.Words.Say(new Core.Readings.FieldRemark("from", Core.Reasons.Reason.Of("what_if.too_long", Longest.TotalDays)))]) : null;
    }

    private static IResult View(LimitRun run, LimitRuns runs) => Answers.Ok(WhatIfLimitViews.Of(run, runs.Ahead(run), Reader.Words));

    private static IResult Objected(IReadOnlyList<FieldSaid> errors) => Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", errors);

    private static IResult NotFound(Guid id) => Answers.NotFound($"run {id}");
}
