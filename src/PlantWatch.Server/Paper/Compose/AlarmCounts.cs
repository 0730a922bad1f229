using PlantWatch.Core.Alarms;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The alarms of the span by rule: how often, and how often nobody acknowledged.</summary>
internal sealed class AlarmCounts(SheetSource source, Wording words)
{
    /// <summary>The table.</summary>
    public Table Make() => new(words.Paper("alarm_counts_caption", source.Plan.Name),
        [new(words.Paper("rule")), new(words.Paper("what"), Wide: true), new(words.Paper("times"), ColumnKind.Number, ""), new(words.Paper("unacknowledged"), ColumnKind.Number, ""), new(words.Paper("hours_stood"), ColumnKind.Number, "h")],
        [.. new AlarmTable(source, words).Alarms().GroupBy(a => a.Rule).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(Row)], words.Paper("alarms_none"));

    private IReadOnlyList<Cell> Row(IGrouping<string, AlarmRecord> rule) =>
    [
        new Text(rule.Key), new Text(words.OfRule(rule.Key, "title")), new Number(rule.Count(), ""), new Number(rule.Count(a => a.AcknowledgedBy is null), ""), new Number(Math.Round(rule.Sum(Hours), 1), "h"),
    ];

    // As far as they lie in the span, and no further than the record goes.
    private double Hours(AlarmRecord alarm)
    {
        var until = alarm.Active || !alarm.ClearedAt.IsSet ? Core.Quantities.Instant.Earlier(source.Span.To, source.State.Watermark) : Core.Quantities.Instant.Earlier(alarm.ClearedAt, source.Span.To);
        return Math.Max(0, (until - Core.Quantities.Instant.Later(alarm.RaisedAt, source.Span.From)).TotalHours);
    }
}
