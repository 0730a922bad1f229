using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
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
            if (!(request.Minutes is > 0 and <= 100_000)) return Answers.Invalid("minutes", "field.positive");
            if (Bounds.OfRemark("why", request.Why) is { } no) return no;
            return await ActAsync(id, request.By, host, (at, by) => new AlarmShelved(at, id, at + TimeSpan.FromMinutes(request.Minutes), by, request.Why), cancellation);
        }).Produces<AlarmView>();
        api.MapPost("/alarms/{id:guid}/unshelve", (Guid id, Acknowledge request, PlantHost host, CancellationToken cancellation) =>
            ActAsync(id, request.By, host, (at, by) => new AlarmUnshelved(at, id, by), cancellation)).Produces<AlarmView>();
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
        var after = worker.State.Alarms.Values.FirstOrDefault(a => a.Id == id) ?? before with { IsAcknowledged = true, AcknowledgedBy = by.Trim() };
        return Answers.Ok(AlarmViews.Now(worker.State, after, Wording.English));
    }

    private static async Task<IResult> HistoryAsync(string? from, string? to, int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (Times.Open(from, to, out var start, out var end) is { } no) return no;
        var take = Math.Clamp(limit ?? 200, 1, 2000);
        var changes = new List<AlarmChangeView>();
        foreach (var worker in host.Circuits.ToArray())
            foreach (var row in await store.EntriesAsync(worker.Partition, new EntryQuery(["alarm"], null, start, end, take), cancellation))
                if (row.Body is AlarmEntry entry)
                    changes.Add(new AlarmChangeView(row.HappenedAt, entry.Change, entry.By, entry.Comment, AlarmViews.Of(worker.State.Plan, entry.Alarm, Wording.English)));
        return Answers.Ok(changes.OrderByDescending(c => c.At).Take(take).ToArray());
    }
}
