using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Manual checks: entered once however often they are sent, answered with what they say of each probe.</summary>
internal static class CheckApi
{
    public static void MapChecks(this RouteGroupBuilder api)
    {
        api.MapPut("/checks/{id:guid}", PutAsync).Produces<CheckAnswer>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/checks/{id:guid}", async (Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        {
            foreach (var worker in host.Circuits.ToArray())
                if (await store.EntryAsync(worker.Partition, id, cancellation) is { Body: CheckEntry entry })
                    return Answers.Ok(await RecallAsync(store, worker.Partition, entry, cancellation));
            return Answers.NotFound($"check {id}");
        }).Produces<CheckAnswer>();
        api.MapGet("/checks", ListAsync).Produces<IReadOnlyList<CheckAnswer>>();
    }

    private static async Task<IResult> PutAsync(
        Guid id, CheckRequest request, PlantHost host, IRecordStore store, ISeriesStore series, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        if (string.IsNullOrWhiteSpace(request.Who)) return Answers.Invalid("who", "field.required");
        if (Objection(request) is { } objection) return objection;
        var check = Check(id, request);
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known) return await AgainAsync(known, check, store, circuit.Partition, cancellation);
        if (check.Corrects is { } wrong && wrong != id && await store.EntryAsync(worker.Partition, wrong, cancellation) is not { Body: CheckEntry })
            return Answers.Invalid("corrects", "check.corrects_unknown");

        var windows = await CheckWindows.ReadAsync(worker, series, check, cancellation);
        var arrivedAt = Instant.Never;
        var outcome = await host.SendAsync(worker.Partition.Value, at => new CheckEntered(arrivedAt = at, check, windows), cancellation);
        return outcome switch
        {
            Outcome.CheckTaken taken when await store.EntryAsync(worker.Partition, id, cancellation) is { Body: CheckEntry { Check: var kept } } => Answers.Ok(new CheckAnswer(
                kept, arrivedAt, CombinedViews.Of(kept, Reader.Words), [.. taken.Remarks.Select(Reader.Words.Say)],
                [.. taken.Judgements.OrderBy(j => j.ProbeId, StringComparer.Ordinal).Select(j => JudgementViews.Of(j, check.SampledAt))])),
            Outcome.AlreadyDone when await store.EntryAsync(worker.Partition, id, cancellation) is { } entry =>
                await AgainAsync(entry, check, store, worker.Partition, cancellation),
            Outcome.TurnedDown no => Answers.From(no),
            _ => Answers.Problem(StatusCodes.Status500InternalServerError, "PlantWatch failed on this", []),
        };
    }

    private static IResult? Objection(CheckRequest request) =>
        Bounds.OfName("who", request.Who) ?? Bounds.OfName("place", request.Place) ?? Bounds.OfRemark("note", request.Note)
        ?? Bounds.OfRemark("correctionReason", request.CorrectionReason)
        ?? Bounds.OfList("results", request.Results, Bounds.Results) ?? Bounds.OfList("panel", request.Panel, Bounds.Panel);

    // The same check once more is answered as the first time; another one under its id is a conflict.
    private static async Task<IResult> AgainAsync(RecordEntry known, ManualCheck check, IRecordStore store, PartitionKey partition, CancellationToken cancellation)
    {
        if (known.Body is CheckEntry entry && Json(entry.Check.AsSent()) == Json(check)) return Answers.Ok(await RecallAsync(store, partition, entry, cancellation));
        return Answers.Problem(StatusCodes.Status409Conflict, "Not possible any more", [new FieldSaid("id", "id.taken", Reader.Words.Find("id.taken"))]);
    }

    private static string Json(ManualCheck check) => JsonSerializer.Serialize(check, PlantJson.Options);

    private static async Task<CheckAnswer> RecallAsync(IRecordStore store, PartitionKey partition, CheckEntry entry, CancellationToken cancellation)
    {
        var at = entry.Check.SampledAt;
        var rows = await store.EntriesAsync(partition, new EntryQuery(["judgement"], null, at, at + TimeSpan.FromMicroseconds(1)), cancellation);
        return Answer(entry, rows.Select(r => r.Body).OfType<JudgementEntry>().Where(j => j.Judgement.CheckId == entry.Check.Id));
    }

    private static CheckAnswer Answer(CheckEntry entry, IEnumerable<JudgementEntry> judgements) => new(
        entry.Check, entry.ArrivedAt, CombinedViews.Of(entry.Check, Reader.Words), [.. entry.Remarks.Select(Reader.Words.Say)],
        [.. judgements.Select(j => j.Judgement).OrderBy(j => j.ProbeId, StringComparer.Ordinal).Select(j => JudgementViews.Of(j, entry.Check.SampledAt))]);

    private static async Task<IResult> ListAsync(string? pool, string? from, string? to, int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (pool is not null && host.WithPool(pool) is null) return Answers.NotFound($"pool {pool}");
        if (Times.Open(from, to, out var start, out var end) is { } no) return no;
        var take = Math.Clamp(limit ?? 200, 1, 2000);
        var all = new List<CheckAnswer>();
        foreach (var worker in pool is null ? host.Circuits.ToArray() : [host.WithPool(pool)!])
        {
            var checks = await store.EntriesAsync(worker.Partition, new EntryQuery(["check"], pool, start, end, take), cancellation);
            var judged = await store.EntriesAsync(worker.Partition, new EntryQuery(["judgement"], null, start, end, take * Math.Max(1, worker.State.Plan.Probes.Length)), cancellation);
            var byCheck = judged.Select(r => r.Body).OfType<JudgementEntry>().ToLookup(j => j.Judgement.CheckId);
            all.AddRange(checks.Select(r => r.Body).OfType<CheckEntry>().Select(c => Answer(c, byCheck[c.Check.Id])));
        }

        return Answers.Ok(all.OrderByDescending(c => c.Check.SampledAt).Take(take).ToArray());
    }

    private static ManualCheck Check(Guid id, CheckRequest request) => new()
    {
        Id = id,
        PoolId = request.PoolId!,
        SampledAt = request.SampledAt,
        EnteredAt = request.EnteredAt,
        Who = request.Who!.Trim(),
        Point = request.Point,
        Place = request.Place,
        Results = [.. request.Results.Select(r => r with { InstrumentDoubt = null })],
        Panel = [.. request.Panel],
        BottomVisible = request.BottomVisible,
        Bathers = request.Bathers,
        Note = request.Note,
        Corrects = request.Corrects,
        CorrectionReason = request.CorrectionReason,
    };
}
