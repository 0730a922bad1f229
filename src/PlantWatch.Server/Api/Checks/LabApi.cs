using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Reports of laboratories: entered once however often they are sent, listed with the chemistry at sampling, closed by a person who may.</summary>
internal static class LabApi
{
    private const int Shown = 200;

    public static void MapLaboratory(this RouteGroupBuilder api)
    {
        api.MapPut("/laboratory/{id:guid}", PutAsync).Produces<LabResultView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/laboratory", async (string? pool, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
            pool is not null && host.WithPool(pool) is null ? Answers.NotFound($"pool {pool}") : Answers.Ok(await ListAsync(pool, host, store, cancellation))).Produces<LabView>();
        api.MapPost("/laboratory/{id:guid}/close", CloseAsync).Produces<LabView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> PutAsync(Guid id, LabRequest request, PlantHost host, IRecordStore store, ISeriesStore series, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        if (Objection(request) is { } no) return no;
        var result = Result(id, request);
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known) return await AgainAsync(known, result, host, store, cancellation);
        if (result.Corrects is { } wrong && await store.EntryAsync(worker.Partition, wrong, cancellation) is not { Body: LabResultEntry }) return Answers.Invalid("corrects", "lab.corrects_unknown");
        var water = await LabWater.ReadAsync(worker, store, series, result, cancellation);
        return await host.SendAsync(worker.Partition.Value, at => new LabResultEntered(at, result, water), cancellation) is Outcome.TurnedDown turned
            ? Answers.From(turned)
            : await OneAsync(id, request.PoolId!, host, store, cancellation);
    }

    private static async Task<IResult> AgainAsync(RecordEntry known, LabResult result, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        known.Body is LabResultEntry entry && JsonSerializer.Serialize(entry.Result, PlantJson.Options) == JsonSerializer.Serialize(result, PlantJson.Options)
            ? await OneAsync(known.Id, result.PoolId, host, store, cancellation)
            : Answers.Conflict("id", "id.taken");

    private static async Task<IResult> OneAsync(Guid id, string pool, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        (await ListAsync(pool, host, store, cancellation)).Results.FirstOrDefault(r => r.Id == id) is { } view ? Answers.Ok(view) : Answers.NotFound($"laboratory result {id}");

    private static async Task<IResult> CloseAsync(Guid id, CloseLabResult request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Why)) return Answers.Invalid("why", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        foreach (var worker in host.Circuits.ToArray())
        {
            if (await store.EntryAsync(worker.Partition, id, cancellation) is not { Body: LabResultEntry }) continue;
            var outcome = await host.SendAsync(worker.Partition.Value, at => new LabResultClosed(at, id, request.By.Trim(), request.Why.Trim()), cancellation);
            return outcome is Outcome.TurnedDown no ? Answers.From(no) : Answers.Ok(await ListAsync(null, host, store, cancellation));
        }

        return Answers.NotFound($"laboratory result {id}");
    }

    private static async Task<LabView> ListAsync(string? pool, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var (pools, results) = (new List<LabPoolView>(), new List<LabResultView>());
        foreach (var worker in host.Circuits.ToArray())
        {
            var state = worker.State;
            pools.AddRange(LabViews.Pools(state, Reader.Words).Where(p => pool is null || p.PoolId == pool));
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["laboratory"], pool, Limit: Shown), cancellation);
            var closings = await store.EntriesAsync(worker.Partition, new EntryQuery(["laboratory_closed"], pool, Limit: Shown), cancellation);
            results.AddRange(LabViews.Results(state, rows, closings, Reader.Words));
        }

        return new(pools, [.. results.OrderByDescending(r => r.SampledAt).Take(Shown)]);
    }

    private static LabResult Result(Guid id, LabRequest request) => new()
    {
        Id = id, PoolId = request.PoolId!, Point = request.Point, Place = Trimmed(request.Place), SampledAt = request.SampledAt, ReportedAt = request.ReportedAt,
        Laboratory = request.Laboratory!.Trim(), SampleNumber = request.SampleNumber!.Trim(), By = request.By!.Trim(), Note = Trimmed(request.Note), Corrects = request.Corrects,
        Counts = [.. (request.Counts ?? []).Select(c => new LabCount(c.Organism, c.Count, c.Sense, c.Millilitres))],
    };

    private static IResult? Objection(LabRequest request)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Laboratory)) return Answers.Invalid("laboratory", "field.required");
        if (string.IsNullOrWhiteSpace(request.SampleNumber)) return Answers.Invalid("sampleNumber", "field.required");
        return Bounds.OfName("by", request.By) ?? Bounds.OfName("laboratory", request.Laboratory) ?? Bounds.OfName("sampleNumber", request.SampleNumber)
            ?? Bounds.OfName("place", request.Place) ?? Bounds.OfRemark("note", request.Note) ?? Bounds.OfList("counts", request.Counts ?? [], 20);
    }

    private static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
