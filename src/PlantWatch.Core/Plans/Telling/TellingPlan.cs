using System.Collections.Immutable;

namespace PlantWatch.Core.Plans.Telling;

/// <summary>A person's hours on call, week after week.</summary>
/// <param name="Person">Id of the person.</param>
/// <param name="Days">The days on which it begins.</param>
/// <param name="Hours">From when to when on the site's clock.</param>
public sealed record Shift(string Person, ImmutableArray<DayOfWeek> Days, WallHours Hours);

/// <summary>How people are told of alarms outside the browser. The empty plan tells nobody.</summary>
public sealed record TellingPlan
{
    /// <summary>Nobody is told.</summary>
    public static TellingPlan None { get; } = new();

    /// <summary>The ways out, in the order of the plant file.</summary>
    public ImmutableArray<ChannelPlan> Channels { get; init; } = [];

    /// <summary>Who is on call when.</summary>
    public ImmutableArray<Shift> Roster { get; init; } = [];

    /// <summary>Hours in which low and medium wait; null when none do.</summary>
    public WallHours? Quiet { get; init; }

    /// <summary>Ids of the persons who are told one after the other while nobody acknowledges.</summary>
    public ImmutableArray<string> Escalation { get; init; } = [];

    /// <summary>Sheets that are sent as planned.</summary>
    public ImmutableArray<SheetPlan> Sheets { get; init; } = [];

    /// <summary>How long an alarm of a priority may stand unacknowledged before the next person is told; null when it is not passed on. Common practice, to be set by the site.</summary>
    public static TimeSpan? Patience(Priority priority) => priority switch
    {
        Priority.Critical => TimeSpan.FromMinutes(5),
        Priority.High => TimeSpan.FromMinutes(15),
        Priority.Medium => TimeSpan.FromMinutes(60),
        _ => null,
    };
}
