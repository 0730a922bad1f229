using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Every rule with its words and with what it did here.</summary>
internal static class RuleViews
{
    /// <summary>The rules in the order of their page.</summary>
    /// <param name="states">All circuits.</param>
    /// <param name="rang">What called somebody in the time that is told.</param>
    /// <param name="words">The language.</param>
    public static IReadOnlyList<RuleView> Of(IReadOnlyCollection<CircuitState> states, IEnumerable<AlarmHappening> rang, Wording words)
    {
        CircuitPlan[] plans = [.. states.Select(s => s.Plan)];
        var alarms = states.SelectMany(s => s.Alarms.Values).ToLookup(a => a.Rule);
        var lately = rang.ToLookup(h => h.Rule, h => h.At);
        return [.. RuleSheets.All.Select(sheet => One(RuleSheets.By(words.Language)[sheet.Number], RuleBook.All[sheet.Number], plans, [.. alarms[sheet.Number]], [.. lately[sheet.Number]], words))];
    }

    private static RuleView One(RuleSheet sheet, Rule rule, CircuitPlan[] plans, AlarmRecord[] alarms, Instant[] rang, Wording words) => new(
        sheet.Number, sheet.Title, sheet.Sentence, sheet.Cause, sheet.Consequence, sheet.Action, sheet.Respond, rule.Priority,
        sheet.OnDelay, sheet.OffDelay, sheet.Deadband, sheet.Suppressed, sheet.Clears, sheet.Provenance,
        rule.Latches, rule.Shelvable, rule.MayLeaveService, rule.ReAlarmAfter?.TotalMinutes, rang.Length, rang.Length == 0 ? null : rang.Max(), alarms.Count(a => a.Active),
        rule.MayLeaveService ? Subjects(plans, rule, words) : [],
        [.. alarms.Where(a => a.OutOfService).OrderBy(a => a.OutOfServiceAt).Select(a => new OutOfServiceView(a.Id, a.Subject, SubjectNames.Of(plans, a.Subject, words), a.OutOfServiceBy, a.OutOfServiceAt.OrNull(), a.OutOfServiceWhy, a.OutOfServiceUntil.OrNull()))]);

    private static SubjectView[] Subjects(CircuitPlan[] plans, Rule rule, Wording words) =>
        [.. plans.SelectMany(p => RuleSubjects.Of(p, rule)).Distinct().Select(s => new SubjectView(s, SubjectNames.Of(plans, s, words)))];
}
