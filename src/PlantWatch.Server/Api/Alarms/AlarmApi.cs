using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What people do with alarms, and what happened to them.</summary>
internal static class AlarmApi
{
    public static void MapAlarms(this RouteGroupBuilder api)
    {
        api.MapPost("/alarms/{id:guid}/acknowledge", async (Guid id, Acknowledge request, PlantHost host, CancellationToken cancellation) =>
            Bounds.OfRemark("comment", request.Comment) ?? await ActAsync(id, request.By, host, (at, by) => new AlarmAcknowledged(at, id, by, request.Comment), cancellation)).Produces<AlarmView>();
        api.MapPost("/alarms/{id:guid}/shelve", async (Guid id, Shelve request, PlantHost host, CancellationToken cancellation) =>
        {
            if (string.IsNullOrWhiteSpace(request.Why)) return Answers.Invalid("why", "field.required");
            if (!(request.Minutes is > 0 and <= 100_000) && !(request.OneShot && request.Minutes == 0)) return Answers.Invalid("minutes", "field.positive");
            if (Bounds.OfRemark("why", request.Why) is { } no) return no;
            var span = request.Minutes == 0 ? AlarmLife.LongestShelf : TimeSpan.FromMinutes(request.Minutes);
            return await ActAsync(id, request.By, host, (at, by) => new AlarmShelved(at, id, at + span, by, request.Why, request.OneShot), cancellation);
        }).Produces<AlarmView>();
        api.MapPost("/alarms/{id:guid}/unshelve", (Guid id, Acknowledge request, PlantHost host, CancellationToken cancellation) =>
            ActAsync(id, request.By, host, (at, by) => new AlarmUnshelved(at, id, by), cancellation)).Produces<AlarmView>();
        api.MapPost("/alarms/{id:guid}/reset", async (Guid id, Acknowledge request, PlantHost host, CancellationToken cancellation) =>
            Bounds.OfRemark("comment", request.Comment) ?? await ActAsync(id, request.By, host, (at, by) => new AlarmReset(at, id, by, request.Comment), cancellation)).Produces<AlarmView>();
        api.MapPost("/alarms/{id:guid}/made-safe", async (Guid id, MakeSafe request, PlantHost host, CancellationToken cancellation) =>
            Bounds.OfRemark("comment", request.Comment) ?? await ActAsync(id, request.By, host, (at, by) =>
                new PlantMadeSafe(at, id, request.BathersOut, request.PumpsIsolated, request.CirculationHeld, by, request.Comment) { RoomLeft = request.RoomLeft, TankDealtWith = request.TankDealtWith }, cancellation)).Produces<AlarmView>();
        api.MapPost("/alarms/out-of-service", (OutOfService request, PlantHost host, CancellationToken cancellation) =>
            ServeAsync(request, host, (at, key, by) => new AlarmTakenOutOfService(at, key, by, request.Why ?? "", request.Until ?? Instant.Never), cancellation)).Produces<AlarmView>();
        api.MapPost("/alarms/return-to-service", (OutOfService request, PlantHost host, CancellationToken cancellation) =>
            ServeAsync(request, host, (at, key, by) => new AlarmReturnedToService(at, key, by, request.Why), cancellation)).Produces<AlarmView>();
        api.MapGet("/alarms", HistoryAsync).Produces<IReadOnlyList<AlarmChangeView>>();
    }

    private static async Task<IResult> ActAsync(Guid id, string? by, PlantHost host, Func<Instant, string, PlantEvent> make, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(by)) return Answers.Invalid("by", "field.required");
        if (Bounds.OfName("by", by) is { } tooLong) return tooLong;
        if (host.WithAlarm(id) is not { } worker) return Answers.NotFound($"live alarm {id}");
        // Between two looks it may be over.
        if (worker.State.Alarms.Values.FirstOrDefault(a => a.Id == id) is not { } before) return Answers.NotFound($"live alarm {id}");
        var outcome = await host.SendAsync(worker.Partition.Value, at => make(at, by.Trim()), cancellation);
        if (outcome is Outcome.TurnedDown no) return Answers.From(no);
        // Acknowledged and gone: the last word on it is the record's.
        var after = worker.State.Alarms.Values.FirstOrDefault(a => a.Id == id) ?? before with { IsAcknowledged = true, AcknowledgedBy = before.AcknowledgedBy ?? by.Trim(), LatchHeld = false, ShelvedUntil = Instant.Never };
        return Answers.Ok(AlarmViews.Now(worker.State, after, Reader.Words));
    }

    private static async Task<IResult> ServeAsync(OutOfService request, PlantHost host, Func<Instant, string, string, PlantEvent> make, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Rule)) return Answers.Invalid("rule", "field.required");
        if (string.IsNullOrWhiteSpace(request.Subject)) return Answers.Invalid("subject", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        var key = $"{request.Rule}/{request.Subject}";
        if (KeeperOf(key, request.Rule, request.Subject, host) is not { } worker) return Answers.NotFound(key);
        var before = worker.State.Alarms.GetValueOrDefault(key);
        var outcome = await host.SendAsync(worker.Partition.Value, at => make(at, key, request.By.Trim()), cancellation);
        if (outcome is Outcome.TurnedDown no) return Answers.From(no);
        // Returned and normal: nothing stands any more, and what was is answered as it is now.
        return (worker.State.Alarms.GetValueOrDefault(key) ?? before) is not { } after
            ? Answers.NotFound(key)
            : Answers.Ok(AlarmViews.Now(worker.State, worker.State.Alarms.ContainsKey(key) ? after : AlarmLife.Return(after, Instant.Never), Reader.Words));
    }

    // Products, reagents and channels are every circuit's, and one of them keeps the alarm: that where it stands, else that which would raise it.
    private static CircuitWorker? KeeperOf(string key, string rule, string subject, PlantHost host)
    {
        CircuitWorker[] all = [.. host.Circuits];
        var home = rule == RuleBook.StockRunsOut.Number ? StockWatch.Home(host, subject) : null;
        return all.FirstOrDefault(w => w.State.Alarms.ContainsKey(key)) ?? home
            ?? all.FirstOrDefault(w => IsOf(w.State.Plan, subject) && Watched.Is(w.State.Plan, rule, subject)) ?? all.FirstOrDefault(w => IsOf(w.State.Plan, subject));
    }

    private static bool IsOf(CircuitPlan plan, string subject) =>
        plan.Id == subject || plan.Probes.Any(p => p.Id == subject) || plan.Pumps.Any(p => p.Id == subject) || plan.Filters.Any(f => f.Id == subject) || plan.Reagents.Any(r => r.Id == subject) || plan.Products.Any(p => p.Id == subject)
        || plan.Telling.Channels.Any(c => c.Id == subject) || plan.Pools.Any(p => p.Id == subject.Split('/')[0]);

    private static async Task<IResult> HistoryAsync(string? from, string? to, int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (Times.Open(from, to, out var start, out var end) is { } no) return no;
        var take = Math.Clamp(limit ?? 200, 1, 2000);
        var changes = new List<AlarmChangeView>();
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["alarm"], null, start, end, take), cancellation))
                if (row.Body is AlarmEntry entry)
                    changes.Add(new AlarmChangeView(row.HappenedAt, entry.Change, entry.By, entry.Comment, AlarmViews.Of(worker.State.Plan, entry.Alarm, Reader.Words)));
        return Answers.Ok(changes.OrderByDescending(c => c.At).Take(take).ToArray());
    }
}
