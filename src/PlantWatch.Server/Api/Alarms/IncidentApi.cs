using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Contamination incidents: declared, noted and closed once however often that is sent; read with the clock as it stands.</summary>
internal static class IncidentApi
{
    private const int ClosedShown = 50;

    public static void MapIncidents(this RouteGroupBuilder api)
    {
        api.MapGet("/incidents/plans", Plans).Produces<IReadOnlyList<KindOfIncident>>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapGet("/incidents", ListAsync).Produces<IReadOnlyList<IncidentView>>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapGet("/incidents/{id:guid}", async (Guid id, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation) =>
            await FindAsync(id, host, store, clock, cancellation) is { } found ? Answers.Ok(found) : Answers.NotFound($"incident {id}")).Produces<IncidentView>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPut("/incidents/{id:guid}", DeclareAsync).Produces<IncidentView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPut("/incidents/{id:guid}/remarks/{remarkId:guid}", NoteAsync).Produces<IncidentView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPut("/incidents/{id:guid}/closing", CloseAsync).Produces<IncidentView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static IResult Plans(string? pool, PlantHost host)
    {
        if (pool is null) return Answers.Ok(IncidentViews.Plans(Reader.Words));
        return host.WithPool(pool) is { } worker ? Answers.Ok(IncidentViews.Plans(worker.State.Plan, Reader.Words)) : Answers.NotFound($"pool {pool}");
    }

    private static async Task<IResult> DeclareAsync(Guid id, DeclareIncident request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("note", request.Note)) is { } tooLong) return tooLong;
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        var incident = new Incident
        {
            Id = id, PoolId = request.PoolId!, Kind = request.Kind, Authority = request.Authority, DeclaredBy = request.By.Trim(), Note = Trimmed(request.Note), HappenedAt = request.HappenedAt,
        };
        // Also one that was closed long ago, or stands in another circuit: an id opens one incident, once.
        if (await KnownAsync(id, host, store, cancellation) is { } known && !Same(known, incident)) return Answers.Conflict("id", "id.taken");
        return await AfterAsync(worker, id, at => new IncidentDeclared(at, incident), host, store, clock, cancellation);
    }

    private static async Task<IResult> NoteAsync(Guid id, Guid remarkId, IncidentNote request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(remarkId)) return Answers.Invalid("remarkId", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("text", request.Text)) is { } tooLong) return tooLong;
        return host.WithIncident(id) is { } worker
            ? await AfterAsync(worker, id, at => new IncidentNoted(at, id, remarkId, request.By.Trim(), request.Text?.Trim() ?? ""), host, store, clock, cancellation)
            : Answers.NotFound($"open incident {id}");
    }

    private static async Task<IResult> CloseAsync(Guid id, CloseIncident request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Why)) return Answers.Invalid("why", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        if (host.WithIncident(id) is { } worker)
            return await AfterAsync(worker, id, at => new IncidentClosed(at, id, request.By.Trim(), request.Why.Trim()), host, store, clock, cancellation);
        return await FindAsync(id, host, store, clock, cancellation) is { } closed ? Answers.Ok(closed) : Answers.NotFound($"open incident {id}");
    }

    private static async Task<IResult> ListAsync(string? pool, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (pool is not null && host.WithPool(pool) is null) return Answers.NotFound($"pool {pool}");
        var now = Instant.From(clock.GetUtcNow());
        var all = new List<IncidentView>();
        foreach (var worker in host.Circuits.ToArray())
        {
            var state = worker.State;
            foreach (var plan in state.Plan.Pools.Where(p => pool is null || p.Id == pool)) all.AddRange(IncidentViews.Of(state, plan.Id, now, Reader.Words));
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["incident"], pool, Limit: ClosedShown * 4), cancellation))
                if (row.Body is IncidentEntry { Change: IncidentChange.Closed or IncidentChange.PoolGone } entry) all.Add(IncidentViews.Of(row, entry, Reader.Words));
        }

        return Answers.Ok(all.OrderBy(i => i.Closed is not null).ThenByDescending(i => i.DeclaredAt).Take(ClosedShown).ToArray());
    }

    private static async Task<IResult> AfterAsync(
        CircuitWorker worker, Guid id, Func<Instant, PlantEvent> make, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        var outcome = await host.SendAsync(worker.Partition.Value, make, cancellation);
        if (outcome is Outcome.TurnedDown no) return Answers.From(no);
        return await FindAsync(id, host, store, clock, cancellation) is { } found ? Answers.Ok(found) : Answers.NotFound($"incident {id}");
    }

    private static async Task<IncidentView?> FindAsync(Guid id, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (host.WithIncident(id) is { State: var state } && state.Incidents.TryGetValue(id, out var open)) return IncidentViews.Of(state, open, Instant.From(clock.GetUtcNow()), Reader.Words);
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["incident"], null, Limit: 2000), cancellation))
                if (row.Body is IncidentEntry { Change: IncidentChange.Closed or IncidentChange.PoolGone } entry && entry.Incident.Id == id) return IncidentViews.Of(row, entry, Reader.Words);
        return null;
    }

    private static async Task<Incident?> KnownAsync(Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (host.WithIncident(id) is { State: var state } && state.Incidents.TryGetValue(id, out var open)) return open;
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["incident"], null, Limit: 2000), cancellation))
                if (row.Body is IncidentEntry entry && entry.Incident.Id == id) return entry.Incident;
        return null;
    }

    private static bool Same(Incident known, Incident said) =>
        known.PoolId == said.PoolId && known.Kind == said.Kind && known.Authority == said.Authority && known.DeclaredBy == said.DeclaredBy && known.Note == said.Note
        && (!said.HappenedAt.IsSet || said.HappenedAt == known.HappenedAt);

    private static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
