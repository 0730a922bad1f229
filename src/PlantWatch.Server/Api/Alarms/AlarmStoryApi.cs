using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>One alarm with its history, whether it stands or is over.</summary>
internal static class AlarmStoryApi
{
    private static readonly TimeSpan Before = TimeSpan.FromDays(30);

    public static void MapAlarmStory(this RouteGroupBuilder api) =>
        api.MapGet("/alarms/{id:guid}", GetAsync).Produces<AlarmStory>().Produces<Problem>(StatusCodes.Status404NotFound);

    private static async Task<IResult> GetAsync(Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.NotFound($"alarm {id}");
        foreach (var worker in host.Circuits.ToArray())
        {
            var state = worker.State;
            var live = state.Alarms.Values.FirstOrDefault(a => a.Id == id && a.State != AlarmState.Normal);
            if ((live ?? await FirstAsync(store, worker.Partition, id, cancellation)) is not { } known) continue;
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["alarm"], known.Subject, MadeAt(id) - Before, Limit: int.MaxValue), cancellation);
            var mine = Mine(rows, id);
            return Answers.Ok(Story(state, live ?? mine[^1].Entry.Alarm, live is not null, mine, Earlier(rows, known)));
        }

        return Answers.NotFound($"alarm {id}");
    }

    // The id bears the time at which it was given, and with it the row that gave it.
    private static async Task<AlarmRecord?> FirstAsync(IRecordStore store, PartitionKey partition, Guid id, CancellationToken cancellation) =>
        Mine(await store.EntriesAsync(partition, new EntryQuery(["alarm"], null, MadeAt(id), MadeAt(id) + TimeSpan.FromMilliseconds(1), int.MaxValue), cancellation), id).FirstOrDefault().Entry?.Alarm;

    private static Instant MadeAt(Guid id) => Instant.FromUnixMilliseconds(Convert.ToInt64(id.ToString("N")[..12], 16));

    private static (Instant At, AlarmEntry Entry)[] Mine(IEnumerable<RecordEntry> rows, Guid id) =>
        [.. rows.Where(r => r.Body is AlarmEntry e && e.Alarm.Id == id).Select(r => (r.HappenedAt, (AlarmEntry)r.Body)).Reverse()];

    private static EarlierAlarm[] Earlier(IEnumerable<RecordEntry> rows, AlarmRecord alarm) =>
        [.. rows.Select(r => r.Body).OfType<AlarmEntry>().Where(e => e.Change == AlarmChange.Raised && e.Alarm.Key == alarm.Key && e.Alarm.Id != alarm.Id && e.Alarm.RaisedAt <= alarm.RaisedAt)
            .Select(e => new EarlierAlarm(e.Alarm.Id, e.Alarm.RaisedAt, Reader.Words.Text(e.Alarm.Cause)))];

    private static AlarmStory Story(CircuitState state, AlarmRecord alarm, bool isLive, (Instant At, AlarmEntry Entry)[] changes, EarlierAlarm[] earlier)
    {
        var (words, sheet) = (Reader.Words, RuleSheets.By(Reader.Here.Language).GetValueOrDefault(alarm.Rule));
        var cause = isLive && alarm.ConsequenceOf is { } key ? state.Alarms.GetValueOrDefault(key) : null;
        var newer = isLive ? null : state.Alarms.GetValueOrDefault(alarm.Key) is { State: not AlarmState.Normal } other && other.Id != alarm.Id ? other : null;
        return new(
            isLive ? AlarmViews.Now(state, alarm, words) : AlarmViews.Of(state.Plan, alarm, words), isLive, SubjectNames.Of([state.Plan], alarm.Subject, words), newer?.Id,
            sheet?.Sentence ?? "", sheet?.Cause ?? "", sheet?.Clears ?? "", AlarmStrips.Of(state.Plan, alarm),
            cause is null ? null : AlarmViews.Now(state, cause, words),
            [.. state.Alarms.Values.Where(a => isLive && a.ConsequenceOf == alarm.Key && a.State != AlarmState.Normal).OrderBy(a => a.Order).Select(a => AlarmViews.Now(state, a, words))],
            [.. changes.Select(c => new AlarmChangeView(c.At, c.Entry.Change, c.Entry.By, c.Entry.Comment, AlarmViews.Of(state.Plan, c.Entry.Alarm, words)))],
            earlier);
    }
}
