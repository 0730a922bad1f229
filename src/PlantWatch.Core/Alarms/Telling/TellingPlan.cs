using System.Collections.Immutable;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>By which way people outside the browser are told. The default is a topic of the broker.</summary>
public enum ChannelKind
{
    /// <summary>A retained state on a topic of its own; it reaches whoever listens.</summary>
    Mqtt = 0,
    /// <summary>A request to another program's address.</summary>
    Webhook,
    /// <summary>A letter to a person.</summary>
    Email,
}

/// <summary>One way out.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Kind">Which way.</param>
/// <param name="From">The lowest priority it is told; a note is never told, whatever stands here.</param>
public sealed record ChannelPlan(string Id, ChannelKind Kind, Priority From)
{
    /// <summary>It speaks to persons, each by name, and so follows the roster.</summary>
    public bool SpeaksToPersons => Kind == ChannelKind.Email;

    /// <summary>It is told alarms of a priority.</summary>
    public bool Takes(Priority priority) => priority > Priority.Note && priority >= From;
}

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

    /// <summary>How long an alarm of a priority may stand unacknowledged before the next person is told; null when it is not passed on. Common practice, to be set by the site.</summary>
    public static TimeSpan? Patience(Priority priority) => priority switch
    {
        Priority.Critical => TimeSpan.FromMinutes(5),
        Priority.High => TimeSpan.FromMinutes(15),
        Priority.Medium => TimeSpan.FromMinutes(60),
        _ => null,
    };
}
