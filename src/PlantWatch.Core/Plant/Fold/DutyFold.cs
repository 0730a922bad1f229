using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Manual checks that should have been made by now.</summary>
internal static class DutyFold
{
    public static void Look(Draft draft, Instant now)
    {
        if (!draft.Index.HasDuties) return;
        var due = DueChecks.At(draft.Plan, [.. draft.Pools], now);
        for (var i = 0; i < draft.Pools.Length; i++) Look(draft, draft.Plan.Pools[i], draft.Index.OverdueKeys[i], due.FirstOrDefault(d => d.Overdue && d.PoolId == draft.Plan.Pools[i].Id), now);
    }

    private static void Look(Draft draft, PoolPlan plan, string key, DueCheck? overdue, Instant now)
    {
        if (overdue is null && !draft.Alarms.Knows(key)) return;
        draft.Alarms.Look(RuleBook.CheckOverdue, key, plan.Id, overdue is not null, now, () => Reason.Of("check.overdue", plan.Name, (now - overdue!.DueAt).TotalMinutes));
    }
}
