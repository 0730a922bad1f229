using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>An alarm with its four sentences: cause, consequence, what to do, how long there is.</summary>
internal static class AlarmViews
{
    /// <summary>An alarm as it stands now: a reading of a probe in doubt is not told without that doubt.</summary>
    public static AlarmView Now(CircuitState state, AlarmRecord alarm, Wording words) => Of(state.Plan, alarm, words) with
    {
        Cause = Cause(state, alarm, words),
        ConsequenceOf = alarm.ConsequenceOf is { } key && state.Alarms.TryGetValue(key, out var cause) ? cause.Id : null,
        Annunciates = Annunciation.Speaks(alarm, key => state.Alarms.GetValueOrDefault(key)),
    };

    /// <summary>An alarm of the record: what was known then.</summary>
    public static AlarmView Of(CircuitPlan plan, AlarmRecord alarm, Wording words) => new(
        alarm.Id, alarm.Rule, alarm.Subject, PoolOf(plan, alarm.Subject), alarm.Priority, alarm.State, alarm.Active, alarm.IsAcknowledged,
        words.OfRule(alarm.Rule, "title"), words.Text(alarm.Cause), words.OfRule(alarm.Rule, "consequence"), words.OfRule(alarm.Rule, "action"),
        words.OfRule(alarm.Rule, "respond"), alarm.RaisedAt.IsSet ? alarm.RaisedAt : alarm.OutOfServiceAt, alarm.ClearedAt.OrNull(), alarm.AcknowledgedBy, alarm.AcknowledgedAt.OrNull(),
        alarm.Comment, alarm.ShelvedBy, alarm.ShelvedUntil.OrNull(),
        alarm.ShelvedWhy, alarm.OneShot, RuleBook.All.TryGetValue(alarm.Rule, out var rule) && rule.Shelvable, alarm.Latches, alarm.LatchHeld,
        alarm.SuppressedBy is { } by ? words.Text(by) : null,
        alarm.OutOfServiceBy, alarm.OutOfServiceAt.OrNull(), alarm.OutOfServiceWhy, alarm.OutOfServiceUntil.OrNull(), alarm.Order, null, alarm.ReAlarms, false, alarm.AnnunciatedAt.OrNull(),
        rule is { MustBeMadeSafe: true }, alarm.MadeSafe is { } made ? new MadeSafeView(made.By, made.At, made.Comment) : null)
    {
        SubjectName = SubjectNames.Of([plan], alarm.Subject, words),
        MayLeaveService = rule is { MayLeaveService: true } && !alarm.OutOfService && Watched.Is(plan, alarm.Rule, alarm.Subject),
    };

    /// <summary>Why it was raised; when it rests on a reading of a probe that is in doubt, that too. Doubt takes no alarm away.</summary>
    public static string Cause(CircuitState state, AlarmRecord alarm, Wording words)
    {
        var (code, cause) = words.Say(alarm.Cause);
        if (IsOfItself(code) && state.Plan.Probes.FirstOrDefault(p => p.Id == alarm.Subject) is { } plan) return $"{plan.Name}: {cause}";
        if (!code.StartsWith("limit.", StringComparison.Ordinal)) return cause;
        var probe = state.Probes.FirstOrDefault(p => p.Id == alarm.Subject);
        if (probe is null || !Standings.IsWorse(probe.Trust.Standing, Standing.Good) || probe.Trust.Reasons.IsEmpty) return cause;
        return words.Text(Reason.Of("alarm.probe_in_doubt", cause, InSentence(words.Text(probe.Trust.Reasons[0]))));
    }

    // What is said of a probe's own signal and bias does not name the probe; beside those of others it must.
    private static bool IsOfItself(string code) => code.StartsWith("signal.", StringComparison.Ordinal) || code.StartsWith("trust.", StringComparison.Ordinal);

    private static string InSentence(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    /// <summary>True when an alarm on a subject is one of the pool: its own, or one on what the whole circuit shares, whose water the pool gets.</summary>
    public static bool Concerns(CircuitPlan plan, string subject, string poolId) => (PoolOf(plan, subject) ?? poolId) == poolId;

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
