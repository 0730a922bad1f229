using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.WhatIf;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>A run of the what-if on limits in words.</summary>
internal static class WhatIfLimitViews
{
    private const int MostShown = 500;

    public static WhatIfLimitsRun Of(LimitRun run, int ahead, Wording words) => new(
        run.Id, run.State, ahead, run.Progress, run.AskedAt, run.From, run.To,
        [.. run.Changes.Select(c => new WhatIfLimitsLine(c.Pool, PoolName(run.Plan, c.Pool), LimitLine.Of(c.Limit)))],
        run.Result is { } result ? Result(result, run, words) : null,
        run.Fault is { } fault ? new("what_if.failed", fault.Length > 0 ? $"{words.Find("what_if.failed")} {fault}" : words.Find("what_if.failed")) : null);

    private static WhatIfLimitsResult Result(LimitResult result, LimitRun run, Wording words)
    {
        var compared = result.Comparison;
        var (before, after) = (compared.Rules.Sum(r => r.Before), compared.Rules.Sum(r => r.After));
        CircuitPlan[] plans = [.. result.Circuits];
        return new(
            Side(before, compared.Rules.Sum(r => r.StoodBefore.TotalHours), result.Before, words), Side(after, compared.Rules.Sum(r => r.StoodAfter.TotalHours), result.After, words), compared.Lost.Length, compared.Gained.Length, before - compared.Lost.Length,
            compared.Lost.Count(e => e.Priority == Priority.Critical), [.. compared.Rules.Select(r => new WhatIfLimitsRule(r.Rule, words.OfRule(r.Rule, "title"), r.Priority, r.Before, r.After, r.Lost, r.Gained, r.StoodBefore.TotalHours, r.StoodAfter.TotalHours))],
            [.. compared.Lost.Take(MostShown).Select(e => Alarm(e, run.To, plans, words))], [.. compared.Gained.Take(MostShown).Select(e => Alarm(e, run.To, plans, words))],
            result.Recorded, result.FoundAgain, result.NotRecorded, result.Readings, result.Took.TotalSeconds, words.Say(result.Notes));
    }

    private static WhatIfLimitsSide Side(int alarms, double hours, AlarmHealth health, Wording words) => new(alarms, hours, health.Told, health.PerHour, AlarmHealthViews.Figures(health, words));

    private static WhatIfLimitsAlarm Alarm(AlarmEpisode e, Instant end, CircuitPlan[] plans, Wording words) => new(
        e.Rule, words.OfRule(e.Rule, "title"), e.Subject, SubjectNames.Of(plans, e.Subject, words), PoolOf(plans, e.Subject), e.Priority, e.From, e.To.IsSet ? e.To : null,
        ((e.To.IsSet ? e.To : end) - e.From).TotalMinutes, e.Called, words.Say(e.Cause));

    private static string? PoolOf(CircuitPlan[] plans, string subject)
    {
        var head = subject.Split('/')[0];
        return plans.SelectMany(p => p.Pools).FirstOrDefault(p => p.Id == head)?.Id
            ?? plans.SelectMany(p => p.Probes).FirstOrDefault(p => p.Id == head)?.PoolId
            ?? plans.SelectMany(p => p.Pumps).FirstOrDefault(p => p.Id == head)?.PoolId;
    }

    private static string PoolName(PlantPlan plan, string pool) => plan.Circuits.SelectMany(c => c.Pools).First(p => p.Id == pool).Name;
}
