using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Jobs of maintenance. Each version is a row of the record; the state keeps the ones that are not over, and watches whether those that are done have helped.</summary>
internal static class JobFold
{
    public static Outcome Write(Draft draft, JobWritten said)
    {
        var job = said.Job with { At = said.At };
        if (Objection(draft.Plan, job) is { } no) return no;
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

    private static Outcome.TurnedDown? Objection(CircuitPlan plan, Job job)
    {
        if (plan.Find(job.Asset) == PlantThing.None) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "asset", Reason.Of("asset.unknown", job.Asset));
        if (string.IsNullOrWhiteSpace(job.Seen)) return No("seen", Reason.Of("field.required"));
        if (job.State == JobState.Done && string.IsNullOrWhiteSpace(job.Done)) return No("done", Reason.Of("fault.say_what_was_done"));
        if (job.Minutes is < 0 or > Job.MostMinutes) return No("minutes", Reason.Of("job.minutes_impossible", Job.MostMinutes));
        if (job.TaskId is { } task && !plan.Tasks.Any(t => t.Id == task && t.Asset == job.Asset)) return No("taskId", Reason.Of("job.task_unknown", task));
        for (var i = 0; i < job.Parts.Length; i++)
            if (string.IsNullOrWhiteSpace(job.Parts[i].Name) || job.Parts[i].Count is < 1 or > 10_000) return No($"parts[{i}]", Reason.Of("job.part_impossible"));
        if (job.Pictures.Length > Job.MostPictures || job.Pictures.Distinct(StringComparer.Ordinal).Count() < job.Pictures.Length || !job.Pictures.All(Picture.IsHash)) return No("pictures", Reason.Of("job.pictures_impossible", Job.MostPictures));
        return null;
    }

    private static Outcome.TurnedDown No(string field, Reason why) => Outcome.TurnedDown.Because(TurnedDownKind.Invalid, field, why);
}
