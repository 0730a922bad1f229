using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Jobs of maintenance that were in hand within the span, and planned work.</summary>
internal sealed class JobTable(SheetSource source, Instant now, Wording words)
{
    /// <summary>Jobs with what was done, by whom, and whether the signals say that it helped.</summary>
    public Table Jobs()
    {
        var rows = source.Wide.Where(r => r.Body.Kind is "fault" or "job_effect" && r.HappenedAt < source.Span.To);
        var jobs = JobViews.OfRecord(source.State, rows, words).Where(j => source.Concerns(j.Asset) && j.OpenedAt < source.Span.To && (j.DoneAt is not { } done || done >= source.Span.From)).OrderBy(j => j.OpenedAt);
        return new(words.Paper("jobs_caption", source.Plan.Name), Columns(), [.. jobs.Select(Row)], words.Paper("jobs_none"));
    }

    /// <summary>Planned work as it stands.</summary>
    public Table Tasks() => new(words.Paper("tasks_caption", source.Plan.Name),
        [new(words.Paper("what"), Wide: true), new(words.Paper("where")), new(words.Paper("every_days"), ColumnKind.Number, ""), new(words.Paper("last_done"), ColumnKind.Time), new(words.Paper("due_at"), ColumnKind.Time)],
        [.. JobViews.Tasks(source.State, now).Where(t => source.Concerns(t.Asset)).OrderBy(t => t.DueAt).Select(t => (IReadOnlyList<Cell>)
            [new Text(t.Name), new Text(t.AssetName), new Number(t.EveryDays, ""), t.DoneAt is { } done ? new When(done) : Dash.Cell, new When(t.DueAt) { Note = t.Overdue ? words.Paper("overdue") : null }])],
        words.Paper("tasks_none"));

    private Column[] Columns() =>
    [
        new(words.Paper("opened"), ColumnKind.Time), new(words.Paper("where")), new(words.Paper("seen"), Wide: true), new(words.Paper("done"), Wide: true), new(words.Paper("stands_at")), new(words.Paper("parts")),
        new(words.Paper("minutes"), ColumnKind.Number, "min"), new(words.Paper("helped"), Wide: true),
    ];

    private IReadOnlyList<Cell> Row(JobView job) =>
    [
        new When(job.OpenedAt) { Note = job.OpenedBy }, new Text(job.AssetName), new Text(job.Seen), job.Done is { } done ? new Text(done) : Dash.Cell,
        new Text(words.Find($"entry.job_{Wording.Key(job.State)}")) { Note = PaperWords.And(source.Span.Say(job.At), job.By) },
        job.Parts.Count == 0 ? Blank.Cell : new Text(string.Join(", ", job.Parts.Select(p => $"{p.Count} {p.Name}{(p.Number is null ? "" : $" ({p.Number})")}"))),
        job.Minutes is { } minutes ? new Number(minutes, "min") : Blank.Cell, job.EffectText is { Length: > 0 } effect ? new Text(effect) : Blank.Cell,
    ];
}
