using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Maintenance;

/// <summary>A job that is not over: it is not done yet, or it is and its effect is still to be seen.</summary>
/// <param name="Job">Its newest version.</param>
public sealed record JobWatch(Job Job)
{
    /// <summary>Keys of the alarms that spoke of the fault while it stood: by these it is judged.</summary>
    public ImmutableArray<string> Signs { get; init; } = [];

    /// <summary>When it was done; never while it is not.</summary>
    public Instant DoneAt { get; init; }

    /// <summary>Since when every sign has been quiet without a break; never while one speaks or none could be heard.</summary>
    public Instant QuietSince { get; init; }

    /// <summary>Did not help where the signs said so, and the job waits to be taken up again; else unknown.</summary>
    public JobEffect Effect { get; init; }

    /// <summary>Takes further signs in.</summary>
    public JobWatch Seeing(IEnumerable<string> signs) => signs.Except(Signs, StringComparer.Ordinal).ToImmutableArray() is { IsEmpty: false } more ? this with { Signs = Signs.AddRange(more) } : this;
}

/// <summary>What the signs of a job say at one moment.</summary>
public enum Hearing
{
    /// <summary>They could not speak: the probe is silent, the pump has not run, the alarm is out of service or suppressed.</summary>
    Deaf = 0,
    /// <summary>At least one speaks of the fault.</summary>
    Speaks,
    /// <summary>All are quiet and could be heard.</summary>
    Quiet,
}
