using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>What speaks against a job as it is written: asked at the door too, before anything is tied to it.</summary>
public static class JobObjection
{
    /// <summary>Why it cannot be written; null when it can.</summary>
    public static Outcome.TurnedDown? Of(CircuitPlan plan, Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
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
