using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Jobs and planned tasks as the pages show them. Pure.</summary>
internal static class JobViews
{
    /// <summary>A job that is not over, as the state knows it. What the record knows beside, when it began, is not told.</summary>
    public static JobView Of(CircuitState state, JobWatch watch, Wording words) =>
        View(state, watch.Job, watch.Job, watch.DoneAt.OrNull(), watch.Effect, [.. watch.Signs], words);

    /// <summary>Jobs of the record, each in its newest version.</summary>
    /// <param name="state">The circuit.</param>
    /// <param name="rows">Rows of kinds job and job_effect, in any order.</param>
    /// <param name="words">The words.</param>
    public static IEnumerable<JobView> OfRecord(CircuitState state, IEnumerable<RecordEntry> rows, Wording words)
    {
        var inOrder = rows.OrderBy(r => r.At).ThenBy(r => r.Id).ToArray();
        var effects = inOrder.Select(r => (r.At, Entry: r.Body as JobEffectEntry)).Where(e => e.Entry is not null).ToLookup(e => e.Entry!.JobId);
        foreach (var versions in inOrder.Select(r => r.Body).OfType<JobEntry>().Select(e => e.Job).GroupBy(j => j.Id))
        {
            var newest = versions.Last();
            var effect = effects[newest.Id].LastOrDefault(e => e.At >= newest.At).Entry;
            var watch = state.Jobs.GetValueOrDefault(newest.Id);
            yield return View(
                state, newest, versions.First(), newest.State == JobState.Done ? newest.At : null, effect?.Effect ?? JobEffect.Unknown, effect?.Signs ?? watch?.Signs ?? [], words);
        }
    }

    public static IReadOnlyList<JobVersion> Versions(IEnumerable<RecordEntry> rows, Guid id, Wording words)
    {
        var versions = new List<JobVersion>();
        foreach (var row in rows.OrderBy(r => r.At).ThenBy(r => r.Id))
            if (row.Body is JobEntry { Job: var job } && job.Id == id)
                versions.Add(new(job.At, job.By, job.State, job.Seen, job.Done, job.Parts, job.Minutes, JobEffect.Unknown, null));
            else if (row.Body is JobEffectEntry effect && effect.JobId == id && versions.Count > 0)
                versions.Add(versions[^1] with { At = row.At, By = "", Effect = effect.Effect, EffectText = Text(effect.Effect, words) });
        return versions;
    }

    public static IEnumerable<TaskView> Tasks(CircuitState state, Instant now) => state.Plan.Tasks.Select((plan, i) =>
    {
        var (task, due) = (state.Tasks[i], state.Tasks[i].DueAt(plan));
        var job = state.Jobs.Values.FirstOrDefault(w => w.Job.TaskId == plan.Id)?.Job.Id;
        return new TaskView(plan.Id, state.Plan.Id, plan.Name, plan.Asset, NameOf(state.Plan, plan.Asset), plan.Every.TotalDays, task.DoneAt.OrNull(), due, now > due, job);
    });

    public static ReliabilityView Of(CircuitPlan plan, string asset, Reliability r, TimeSpan span) => new(
        asset, NameOf(plan, asset), r.Failures, span.TotalDays, r.Down.TotalHours, r.MeanTimeBetween?.TotalDays, r.AtLeast.TotalDays, r.AtMost?.TotalDays,
        r.MeanTimeToRepair?.TotalHours, r.IsRepeatOffender);

    /// <summary>What people call a thing of the plan; its id when the plan no longer names it.</summary>
    public static string NameOf(CircuitPlan plan, string asset) =>
        plan.Pumps.FirstOrDefault(p => p.Id == asset)?.Name ?? plan.Probes.FirstOrDefault(p => p.Id == asset)?.Name ?? plan.Filters.FirstOrDefault(f => f.Id == asset)?.Name
        ?? plan.Pools.FirstOrDefault(p => p.Id == asset)?.Name ?? (plan.Id == asset ? plan.Name : asset);

    private static JobView View(CircuitState state, Job job, Job first, Instant? doneAt, JobEffect effect, IReadOnlyList<string> signs, Wording words) => new(
        job.Id, job.Asset, NameOf(state.Plan, job.Asset), job.Seen, job.Done, job.State, job.AlarmId, job.By, job.At, job.TaskId, job.Parts, job.Minutes,
        first.At, first.By, doneAt, effect, Text(effect, words), [.. signs.Select(key => words.OfRule(key[..key.IndexOf('/', StringComparison.Ordinal)], "title")).Distinct()], [.. job.Pictures]);

    private static string? Text(JobEffect effect, Wording words) => effect switch
    {
        JobEffect.Helped => words.Find("job.helped"),
        JobEffect.DidNotHelp => words.Find("job.did_not_help"),
        JobEffect.CannotTell => words.Find("job.cannot_tell"),
        _ => null,
    };
}
