using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Jobs of maintenance. Each version is a row of the record; the state keeps the ones that are not over, and watches whether those that are done have helped.</summary>
internal static class JobFold
{
    public static Outcome Write(Draft draft, JobWritten said)
    {
        var job = said.Job with { At = said.At };
        if (JobObjection.Of(draft.Plan, job) is { } no) return no;
        var known = draft.Jobs.GetValueOrDefault(job.Id);
        if (known is not null && known.Job.SaysWhat(job)) return Outcome.AlreadyDone.Instance;
        var done = job.State == JobState.Done;
        // The calendar asked for planned work and no signal did: there is nothing that could show that it helped.
        draft.Jobs = done && !job.IsFault
            ? draft.Jobs.Remove(job.Id)
            : draft.Jobs.SetItem(job.Id, new JobWatch(job) { Signs = known?.Signs ?? [], DoneAt = done ? said.At : Instant.Never }.Seeing(JobSigns.Of(draft, job)));
        draft.Write(said.At, said.At, job.Asset, new JobEntry(job));
        if (done && job.TaskId is { } task) TaskFold.Done(draft, task, job.Id, said.At);
        return Outcome.Done.Instance;
    }

    public static void Tick(Draft draft, Instant now)
    {
        foreach (var (id, watch) in draft.Jobs)
            if (watch.Effect == JobEffect.Unknown) Look(draft, id, watch.Seeing(JobSigns.Of(draft, watch.Job)), watch, now);
    }

    private static void Look(Draft draft, Guid id, JobWatch watch, JobWatch before, Instant now)
    {
        var (next, effect) = EffectPolicy.Look(watch, watch.DoneAt.IsSet ? JobSigns.Hear(draft, watch) : Hearing.Deaf, now);
        if (effect == JobEffect.Unknown)
        {
            if (next != before) draft.Jobs = draft.Jobs.SetItem(id, next);
            return;
        }

        // A repair that did not help is work still to be done: it stays on the board until somebody takes it up again.
        draft.Jobs = effect == JobEffect.DidNotHelp ? draft.Jobs.SetItem(id, next with { Effect = effect }) : draft.Jobs.Remove(id);
        draft.Write(now, now, next.Job.Asset, new JobEffectEntry(id, next.Job.Asset, effect, next.Signs));
    }
}
