using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Rows of the record as the page on it says them, of the groups asked for.</summary>
internal static class EventTable
{
    // Told in time it needs no word; typed in later it does.
    private static readonly TimeSpan Prompt = TimeSpan.FromMinutes(15);

    /// <summary>The table.</summary>
    public static Table Of(SheetSource source, IReadOnlyCollection<RecordGroup> groups, string caption, string whenEmpty, Wording words)
    {
        var rows = source.Rows.Where(r => source.Concerns(r.Subject)).Select(r => (Row: r, View: EntryViews.Of(source.Plan, r, words))).Where(r => r.View is { } view && groups.Contains(view.About));
        return new(words.Paper(caption, source.Plan.Name), Columns(words), [.. rows.Select(r => Cells(source, r.Row, r.View!, words))], words.Paper(whenEmpty));
    }

    private static Column[] Columns(Wording words) =>
        [new(words.Paper("time"), ColumnKind.Time), new(words.Paper("about")), new(words.Paper("where")), new(words.Paper("what"), Wide: true), new(words.Paper("by"))];

    private static Cell[] Cells(SheetSource source, RecordEntry row, EntryView view, Wording words) =>
    [
        new When(row.HappenedAt) { Note = row.At - row.HappenedAt > Prompt ? words.Paper("entered", source.Span.Say(row.At)) : null },
        new Text(words.PaperWord("group", view.About)), new Text(view.SubjectName), new Text(view.Text), view.By is { } by ? new Text(by) : Blank.Cell,
    ];
}
