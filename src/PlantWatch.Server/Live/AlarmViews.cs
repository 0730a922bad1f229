using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>An alarm with its four sentences: cause, consequence, what to do, how long there is.</summary>
internal static class AlarmViews
{
    public static AlarmView Of(CircuitPlan plan, AlarmRecord alarm, Wording words) => new(
        alarm.Id, alarm.Rule, alarm.Subject, PoolOf(plan, alarm.Subject), alarm.Priority, alarm.State, alarm.Active, alarm.IsAcknowledged,
        words.OfRule(alarm.Rule, "title"), words.Text(alarm.Cause), words.OfRule(alarm.Rule, "consequence"), words.OfRule(alarm.Rule, "action"),
        words.OfRule(alarm.Rule, "respond"), alarm.RaisedAt, alarm.ClearedAt.OrNull(), alarm.AcknowledgedBy, alarm.AcknowledgedAt.OrNull(),
        alarm.Comment, alarm.ShelvedBy, alarm.ShelvedUntil.OrNull());

    /// <summary>The pool a subject belongs to; null for what the whole circuit shares.</summary>
    public static string? PoolOf(CircuitPlan plan, string subject)
    {
        var slash = subject.IndexOf('/', StringComparison.Ordinal);
        var id = slash > 0 ? subject[..slash] : subject;
        return plan.Pools.FirstOrDefault(p => p.Id == id)?.Id
            ?? plan.Probes.FirstOrDefault(p => p.Id == id)?.PoolId
            ?? plan.Pumps.FirstOrDefault(p => p.Id == id)?.PoolId;
    }
}
