using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Rows of the record as marks over the strips of a pool: what happened there, or to what all pools of the circuit share.</summary>
internal static class MarkViews
{
    private static readonly (string Kind, MarkKind Mark)[] Shown =
    [
        ("check", MarkKind.Test), ("dose", MarkKind.Dose), ("calibration", MarkKind.Calibration), ("work", MarkKind.Probe), ("correction", MarkKind.Probe), ("alarm", MarkKind.Alarm),
        ("filter_washed", MarkKind.Wash), ("stock", MarkKind.Stock), ("fault", MarkKind.Job), ("pool_state", MarkKind.Pool), ("incident", MarkKind.Pool), ("laboratory", MarkKind.Laboratory),
        ("gap", MarkKind.Gap), ("plan", MarkKind.Plan),
    ];

    /// <summary>The kinds of rows that can be marks.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. Shown.Select(s => s.Kind)];

    /// <summary>The marks of a pool among rows of its circuit, oldest first.</summary>
    public static IReadOnlyList<MarkView> Of(CircuitPlan plan, string pool, IReadOnlyCollection<RecordEntry> rows, Wording words)
    {
        var over = rows.Select(r => r.Body).OfType<AlarmEntry>().Where(a => a.Change == AlarmChange.Cleared).GroupBy(a => a.Alarm.Id).ToDictionary(g => g.Key, g => g.Max(a => a.Alarm.ClearedAt));
        return [.. rows.Where(r => AlarmViews.Concerns(plan, r.Subject, pool) && IsShown(r.Body)).Select(r => Mark(plan, r, over, words)).OfType<MarkView>().OrderBy(m => m.At).ThenBy(m => m.Id)];
    }

    // A proposal changes nothing yet, and an alarm is one mark however often it was seen and shelved.
    private static bool IsShown(EntryBody body) => body switch
    {
        CalibrationEntry { Calibration: var c } => c.Status is CalibrationStatus.Approved or CalibrationStatus.Adjusted,
        AlarmEntry a => a.Change == AlarmChange.Raised,
        StockEntry { Move: var m } => m.Act != Core.Stock.StockAct.Counted,
        _ => true,
    };

    private static MarkView? Mark(CircuitPlan plan, RecordEntry row, Dictionary<Guid, Instant> over, Wording words)
    {
        var kind = Shown.First(s => s.Kind == row.Body.Kind).Mark;
        if (row.Body is AlarmEntry { Alarm: var alarm })
            return new(alarm.Id, kind, row.HappenedAt, over.TryGetValue(alarm.Id, out var end) ? end : null, alarm.Subject, SubjectNames.Of([plan], alarm.Subject, words), $"{words.OfRule(alarm.Rule, "title")}: {words.Text(alarm.Cause)}", null);
        if (row.Body is GapEntry gap)
            return new(row.Id, kind, gap.From.IsSet ? gap.From : row.HappenedAt, gap.To.OrNull(), row.Subject, SubjectNames.Of([plan], row.Subject, words), words.Text(gap.Reason), null);
        return EntryViews.Of(plan, row, words) is { } said ? new(row.Id, kind, row.HappenedAt, null, row.Subject, said.SubjectName, said.Text, said.By) : null;
    }
}
