using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>Puts what is owed into words while the alarm is there to be read.</summary>
internal static class MessageMaker
{
    /// <summary>Words for notices of one look.</summary>
    /// <param name="site">Name of the site.</param>
    /// <param name="state">The circuit now.</param>
    /// <param name="notices">What is owed.</param>
    /// <param name="told">What was written down before: an alarm that is gone is known from there.</param>
    /// <param name="words">The language.</param>
    public static ImmutableArray<WrittenNotice> Write(string site, CircuitState state, IEnumerable<Notice> notices, IReadOnlyList<OutboxItem> told, Wording words) =>
        [.. notices.Select(notice => new WrittenNotice(notice, Of(site, state, notice, told, words).Write()))];

    private static Message Of(string site, CircuitState state, Notice notice, IReadOnlyList<OutboxItem> told, Wording words)
    {
        var alarm = state.Alarms.Values.FirstOrDefault(a => a.Id == notice.Alarm);
        var message = alarm is not null ? Of(site, state, notice, alarm, words)
            : told.LastOrDefault(item => item.Notice.Alarm == notice.Alarm) is { } before ? Message.Read(before.Written.Content) with { Id = notice.Id, Kind = notice.Kind, Step = notice.Step, Follows = [] }
            : throw new InvalidOperationException($"nothing is known of the alarm of notice {notice.Id}");
        return message with { HappenedAt = HappenedAt(notice, alarm), By = notice.Kind == NoticeKind.Acknowledged ? alarm?.AcknowledgedBy : null };
    }

    private static Message Of(string site, CircuitState state, Notice notice, AlarmRecord alarm, Wording words)
    {
        var view = AlarmViews.Now(state, alarm, words);
        return new(
            notice.Id, notice.Kind, notice.Priority, notice.Step, alarm.Id, alarm.Rule, alarm.Subject, site, state.Plan.Id, state.Plan.Name,
            view.PoolId, state.Plan.Pools.FirstOrDefault(pool => pool.Id == view.PoolId)?.Name,
            view.Title, view.Cause, alarm.RaisedAt, view.Consequence, view.Action, view.TimeToRespond, null, null,
            [.. notice.Consequences.Select(key => state.Alarms.GetValueOrDefault(key)).OfType<AlarmRecord>().Select(a => Short(AlarmViews.Now(state, a, words)))]);
    }

    private static string Short(AlarmView alarm) => $"{alarm.Title}: {alarm.Cause}";

    // What went without a trace, with its probe or its pool, is over now.
    private static Core.Quantities.Instant? HappenedAt(Notice notice, AlarmRecord? alarm) => notice.Kind switch
    {
        NoticeKind.Acknowledged => alarm?.AcknowledgedAt.OrNull(),
        NoticeKind.Cleared => alarm?.ClearedAt.OrNull(),
        _ => null,
    };
}
