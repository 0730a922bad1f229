using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Filters: how they stand, and a wash or a backwash that somebody notes.</summary>
internal static class FilterApi
{
    // The state knows the newest of each filter; what a phone sends again may be older.
    private const int Remembered = 500;

    public static void MapFilters(this RouteGroupBuilder api)
    {
        api.MapGet("/filters", (PlantHost host, TimeProvider clock) => Answers.Ok(All(host, Instant.From(clock.GetUtcNow())))).Produces<IReadOnlyList<FiltersView>>();
        api.MapPost("/filters/{id}/washed", WashedAsync).Produces<WashView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPost("/filters/{id}/backwash", BeginAsync).Produces<FilterView>().Produces<Problem>(StatusCodes.Status400BadRequest)
            .Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPost("/filters/{id}/backwash/end", EndAsync).Produces<FilterView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static IReadOnlyList<FiltersView> All(PlantHost host, Instant now) =>
        [.. host.Circuits.ToArray().Select(w => w.State).Where(s => !s.Filters.IsEmpty).Select(s => FilterViews.Of(s, now, Reader.UnitsIn(host.Plan)))];

    private static async Task<IResult> WashedAsync(string id, WashRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (Objection(id, request, host, out var worker) is { } no) return no;
        if (await WashAsync(store, worker, request.Id, cancellation) is { } known) return IsSame(known, id, request) ? Washed(worker, id) : Answers.Conflict("id", "id.taken");
        if (await host.SendAsync(worker.Partition.Value, at => new FilterWashed(at, request.Id, id, request.By!.Trim()) { CubicMetres = request.CubicMetres }, cancellation) is Outcome.TurnedDown turned) return Answers.From(turned);
        return Washed(worker, id);
    }

    private static IResult Washed(CircuitWorker worker, string id)
    {
        if (worker.State.Filters.FirstOrDefault(f => f.Id == id) is not { } kept) return Answers.NotFound($"filter {id}");
        var stated = worker.State.Plan.Filters.FirstOrDefault(f => f.Id == id)?.CleanKilopascals;
        return Answers.Ok(new WashView(id, kept.WashedAt, kept.WashedBy, kept.CleanKilopascals ?? stated));
    }

    private static async Task<FilterEntry?> WashAsync(IRecordStore store, CircuitWorker worker, Guid id, CancellationToken cancellation) =>
        (await store.EntriesAsync(worker.Partition, new EntryQuery(["filter_washed"], Limit: Remembered), cancellation)).Select(r => r.Body).OfType<FilterEntry>().FirstOrDefault(e => e.WashId == id);

    private static bool IsSame(FilterEntry known, string filter, WashRequest request) =>
        known.FilterId == filter && known.By == request.By!.Trim() && (request.CubicMetres is { } stated ? !known.IsUsual && known.CubicMetres == stated : known.IsUsual || known.CubicMetres is null);

    private static async Task<IResult> BeginAsync(string id, WashRequest request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (await IsOverAsync(id, request, host, store, cancellation)) return Answers.Conflict("id", "id.taken");
        BackwashBegun Begun(Instant at) => new(at, request.Id, id, request.By?.Trim() ?? "") { Why = request.Why };
        if (host.WithFilter(id, request.Circuit) is { } worker && BackwashWhy.Objection(worker.State, Begun(Instant.From(clock.GetUtcNow()))) is { } no) return Answers.From(no);
        return await BackwashAsync(id, request, host, clock, Begun, cancellation);
    }

    // One that is over and another came after it: sent again it must not silence anything anew.
    private static async Task<bool> IsOverAsync(string id, WashRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (host.WithFilter(id, request.Circuit) is not { } worker || worker.State.Filters.Any(f => f.Id == id && f.Backwash.Id == request.Id)) return false;
        var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["backwash"], Limit: Remembered), cancellation);
        return rows.Select(r => r.Body).OfType<BackwashEntry>().Any(e => e.Window.Id == request.Id);
    }

    private static Task<IResult> EndAsync(string id, WashRequest request, PlantHost host, TimeProvider clock, CancellationToken cancellation) =>
        BackwashAsync(id, request, host, clock, at => new BackwashEnded(at, request.Id, id, request.By!.Trim()), cancellation);

    private static async Task<IResult> BackwashAsync(string id, WashRequest request, PlantHost host, TimeProvider clock, Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        if (Objection(id, request, host, out var worker) is { } no) return no;
        if (await host.SendAsync(worker.Partition.Value, make, cancellation) is Outcome.TurnedDown turned) return Answers.From(turned);
        return worker.State.Filters.FirstOrDefault(f => f.Id == id) is { } kept
            ? Answers.Ok(FilterViews.One(worker.State, kept, Instant.From(clock.GetUtcNow()))) : Answers.NotFound($"filter {id}");
    }

    private static IResult? Objection(string id, WashRequest request, PlantHost host, out CircuitWorker worker)
    {
        worker = null!;
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        if (host.WithFilter(id, request.Circuit) is not { } found) return Answers.NotFound($"filter {id}");
        worker = found;
        return null;
    }
}
