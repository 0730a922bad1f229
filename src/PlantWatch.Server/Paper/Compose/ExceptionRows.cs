using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The exceptions that stood within the span, from reading to closing.</summary>
internal sealed class ExceptionRows(SheetSource source, Instant now, Wording words)
{
    /// <summary>The table.</summary>
    public Table Make() => new(words.Paper("exceptions_caption", source.Plan.Name), Columns(), [.. Lines().Select(l => Row(ExceptionViews.Of(source.Plan, l, now, words)))], words.Paper("exceptions_none"));

    /// <summary>Those whose reading or whose closing lies in the span, or that stood through it.</summary>
    public IEnumerable<ExceptionLine> Lines()
    {
        var closed = ExceptionLines.Closed(source.Worker, source.Wide, null).Select(p => p.Line);
        return source.State.Exceptions.Concat(closed).DistinctBy(l => l.Id)
            .Where(l => source.Pools.Any(p => ExceptionLines.IsOf(source.Worker, l, p.Id)) && l.Reading.At < source.Span.To && (!l.ClosedAt.IsSet || l.ClosedAt >= source.Span.From)).OrderBy(l => l.Reading.At);
    }

    private Column[] Columns() =>
    [
        new(words.Paper("read_at"), ColumnKind.Time), new(words.Paper("where")), new(words.Paper("reading"), Wide: true), new(words.Paper("action"), Wide: true), new(words.Paper("retest"), Wide: true),
        new(words.Paper("closed"), Wide: true),
    ];

    private Cell[] Row(ExceptionView line) =>
    [
        new When(line.ReadAt), new Text(line.Place) { Note = words.PaperWord("breach", line.Grade) },
        new Text(line.Reading.Text) { Note = PaperWords.And(line.Rule, line.ReadBy, line.ReadingWithdrawn ? words.Paper("withdrawn") : null) }, Step(line.Action), Step(line.Retest), Closing(line),
    ];

    private Cell Step(ExceptionStepView? step) => step is null ? Dash.Cell
        : new Text(PaperWords.Joined(": ", words.Find($"entry.step_{Wording.Key(step.Kind)}"), step.What?.Text, step.Word == RetestWord.None ? null : words.Find($"entry.retest_{Wording.Key(step.Word)}"), step.Text))
        { Note = PaperWords.And(source.Span.Say(step.At), step.By) };

    private Text Closing(ExceptionView line) => line.ClosedAt is { } at
        ? new Text(PaperWords.Joined(": ", words.Find($"entry.closing_{Wording.Key(line.Closing)}"), line.ClosedWhy)) { Note = PaperWords.And(source.Span.Say(at), line.ClosedBy) }
        : new Text(words.Paper("open")) { Note = line.Owed is { } owed ? PaperWords.And(words.PaperWord("owed", owed.Act), owed.By is { } by ? words.Paper("until", source.Span.Say(by)) : null, owed.Who) : null };
}
