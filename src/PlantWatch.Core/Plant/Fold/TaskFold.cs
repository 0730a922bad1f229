using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Planned tasks: since when they count, when they were done, which are overdue.</summary>
internal static class TaskFold
{
    public static void Done(Draft draft, string task, Guid job, Instant at)
    {
        for (var i = 0; i < draft.Tasks.Length; i++)
            if (draft.Tasks[i].Id == task) draft.Tasks = draft.Tasks.SetItem(i, draft.Tasks[i] with { DoneAt = at, DoneBy = job });
    }

    /// <summary>The plant file came into force: new tasks count from now, and what nobody plans any more is overdue no longer.</summary>
    public static void Loaded(Draft draft, Instant at)
    {
        draft.Tasks = [.. draft.Tasks.Select(t => t.Since.IsSet ? t : t with { Since = at })];
        var planned = draft.Plan.Tasks.Select(KeyFor).ToHashSet(StringComparer.Ordinal);
        foreach (var alarm in draft.Alarms.All.Where(a => a.Rule == RuleBook.PlannedWorkOverdue.Number && !planned.Contains(a.Key)).ToArray())
            draft.Alarms.Retire(alarm.Key, at);
    }

    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Tasks.Length; i++)
        {
            var (plan, due) = (draft.Plan.Tasks[i], draft.Tasks[i].DueAt(draft.Plan.Tasks[i]));
            var (key, overdue) = (KeyFor(plan), now > due);
            if (overdue || draft.Alarms.Knows(key))
                draft.Alarms.Look(RuleBook.PlannedWorkOverdue, key, plan.Asset, overdue, now, () => Reason.Of("task.overdue", plan.Name, (now - due).TotalDays));
        }
    }

    private static string KeyFor(TaskPlan plan) => RuleBook.PlannedWorkOverdue.KeyFor($"{plan.Asset}/{plan.Id}");
}
