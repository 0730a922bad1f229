using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The alarms that stood within the span, each once, with what was done about it.</summary>
internal sealed class AlarmTable(SheetSource source, Wording words)
{
    private readonly ILookup<Guid, AlarmEntry> _changes = source.Wide.Where(r => r.HappenedAt < source.Span.To).Select(r => r.Body).OfType<AlarmEntry>().ToLookup(e => e.Alarm.Id);
    private readonly ILookup<Guid, JobEntry> _jobs = source.Wide.Select(r => r.Body).OfType<JobEntry>().Where(j => j.Job.AlarmId is not null).ToLookup(j => j.Job.AlarmId!.Value);

    /// <summary>The table.</summary>
    public Table Make() => new(words.Paper("alarms_caption", source.Plan.Name), Columns(), [.. Alarms().Select(Row)], words.Paper("alarms_none"));

    /// <summary>Each alarm as it stood last in the span; a note is none. One that was raised long before, and of which nothing was said since, is known by what still stands.</summary>
    public IEnumerable<AlarmRecord> Alarms() => _changes.Select(g => g.Last().Alarm).Concat(Later()).Concat(source.State.Alarms.Values).DistinctBy(a => a.Id)
        .Where(a => a.Id != Guid.Empty && a.Priority > Core.Plans.Priority.Note && source.Concerns(a.Subject) && a.RaisedAt.IsSet && a.RaisedAt < source.Span.To && (!a.ClearedAt.IsSet || a.Active || a.ClearedAt >= source.Span.From))
        .OrderBy(a => a.RaisedAt).ThenBy(a => a.Order);

    private IEnumerable<AlarmRecord> Later() => source.Wide.Where(r => r.HappenedAt >= source.Span.To).Select(r => r.Body).OfType<AlarmEntry>().Select(e => e.Alarm);

    private Column[] Columns() =>
    [
        new(words.Paper("raised"), ColumnKind.Time), new(words.Paper("over"), ColumnKind.Time), new(words.Paper("priority")), new(words.Paper("where")), new(words.Paper("what"), Wide: true),
        new(words.Paper("acknowledged")), new(words.Paper("done"), Wide: true),
    ];

    private Cell[] Row(AlarmRecord alarm)
    {
        var view = AlarmViews.Of(source.Plan, alarm, words);
        return
        [
            new When(alarm.RaisedAt), alarm.Active || !alarm.ClearedAt.IsSet ? new Text(words.Paper("stands")) : new When(alarm.ClearedAt),
            new Text(words.PaperWord("priority", alarm.Priority)), new Text(view.SubjectName), new Text($"{view.Title}. {view.Cause}") { Note = alarm.Rule },
            Acknowledged(alarm), new Text(Done(alarm)),
        ];
    }

    private Cell Acknowledged(AlarmRecord alarm) => alarm.AcknowledgedBy is { } by ? new Text(by) { Note = alarm.AcknowledgedAt.IsSet ? source.Span.Say(alarm.AcknowledgedAt) : null } : Dash.Cell;

    // What people said and did with it, and the jobs that answer it.
    private string Done(AlarmRecord alarm) => PaperWords.Joined("; ",
    [
        .. _changes[alarm.Id].Where(c => c.By is not null && (c.Comment is not null || c.Change != AlarmChange.Acknowledged))
            .Select(c => PaperWords.Joined(": ", words.Paper("act_by", words.PaperWord("act", c.Change), c.By!), c.Comment)),
        .. _jobs[alarm.Id].GroupBy(j => j.Job.Id).Select(g => g.Last().Job).Select(j => PaperWords.Joined(": ", words.Find($"entry.job_{Wording.Key(j.State)}"), j.Done ?? j.Seen)),
    ]);
}
