using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Maintenance;

/// <summary>What is known of a planned task.</summary>
/// <param name="Id">Its id in the plant file.</param>
public sealed record TaskState(string Id)
{
    /// <summary>When the plant file first named it; never before that.</summary>
    public Instant Since { get; init; }

    /// <summary>When it was last done, as a job says; never when none does.</summary>
    public Instant DoneAt { get; init; }

    /// <summary>The job that did it.</summary>
    public Guid? DoneBy { get; init; }

    /// <summary>When it is due: its period after it was last done by a job, else by the plant file, else after the plant file named it.</summary>
    public Instant DueAt(TaskPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Counted(plan) + plan.Every;
    }

    private Instant Counted(TaskPlan plan) =>
        DoneAt.IsSet ? DoneAt : plan.LastDone is { } day ? Instant.From(new DateTimeOffset(day, TimeOnly.MinValue, TimeSpan.Zero)) : Since;
}
