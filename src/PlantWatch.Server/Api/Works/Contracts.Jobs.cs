using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- PUT /api/v1/jobs/{id}  JobRequest -> JobView     GET /api/v1/jobs?asset=  JobView[] newest first, each in its newest version
//      GET /api/v1/jobs/{id} : JobVersion[] oldest first
// ---- GET /api/v1/tasks : TaskView[] by due time
// ---- GET /api/v1/reliability?days=  ReliabilityView[], most failures first

/// <summary>A job as the form sends it.</summary>
public sealed record JobRequest(string? Asset, string? Seen, string? Done, JobState State, Guid? AlarmId, string? By)
{
    /// <summary>The planned task it does; null for a fault.</summary>
    public string? TaskId { get; init; }

    /// <summary>Parts that were fitted.</summary>
    public IReadOnlyList<PartUsed>? Parts { get; init; }

    /// <summary>Time at work in minutes.</summary>
    public int? Minutes { get; init; }

    /// <summary>Time of the version that its writer saw; null for a new job, and where the writer does not say: then what is word for word an older version is that one, sent again.</summary>
    public Instant? After { get; init; }

    /// <summary>Its pictures, by the names they were taken in with; all of the job, not only new ones.</summary>
    public IReadOnlyList<string>? Pictures { get; init; }
}

/// <summary>A job: its newest version, when it began, and whether the plant's signals say that it helped.</summary>
/// <param name="OpenedAt">When it was first written.</param>
/// <param name="OpenedBy">Who wrote it first.</param>
/// <param name="DoneAt">When it was done; null while it is not.</param>
/// <param name="Effect">What the signals say.</param>
/// <param name="EffectText">The same in words; null while there is nothing to say.</param>
/// <param name="Signs">Alarms that it is judged by, in words.</param>
/// <param name="Pictures">Its pictures, by the names that they are shown by.</param>
public sealed record JobView(
    Guid Id, string Asset, string AssetName, string Seen, string? Done, JobState State, Guid? AlarmId, string By, Instant At, string? TaskId,
    IReadOnlyList<PartUsed> Parts, int? Minutes, Instant OpenedAt, string OpenedBy, Instant? DoneAt, JobEffect Effect, string? EffectText, IReadOnlyList<string> Signs, IReadOnlyList<string> Pictures);

/// <summary>One version of a job.</summary>
public sealed record JobVersion(Instant At, string By, JobState State, string Seen, string? Done, IReadOnlyList<PartUsed> Parts, int? Minutes, JobEffect Effect, string? EffectText);

/// <summary>A planned task.</summary>
/// <param name="EveryDays">Its period in days.</param>
/// <param name="DoneAt">When it was last done, as a job says; null when none does.</param>
/// <param name="DueAt">When it is due.</param>
/// <param name="Overdue">It is past that.</param>
/// <param name="JobId">The job that is on it; null when none is.</param>
public sealed record TaskView(string Id, string Circuit, string Name, string Asset, string AssetName, double EveryDays, Instant? DoneAt, Instant DueAt, bool Overdue, Guid? JobId);

/// <summary>How often a thing failed.</summary>
/// <param name="Days">Days that were looked at.</param>
/// <param name="DownHours">Hours it was down.</param>
/// <param name="MeanDays">Mean time between failures in days; null when there was none.</param>
/// <param name="LowDays">Its lower end at 90 %.</param>
/// <param name="HighDays">Its upper end; null when there was none.</param>
/// <param name="RepairHours">Mean time to repair in hours; null when there was none.</param>
public sealed record ReliabilityView(
    string Asset, string AssetName, int Failures, double Days, double DownHours, double? MeanDays, double LowDays, double? HighDays, double? RepairHours, bool RepeatOffender);
