using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>What a message says. The default is that an alarm was raised.</summary>
public enum NoticeKind
{
    /// <summary>It asks for somebody: raised, annunciated anew, or passed on because nobody acknowledged.</summary>
    Raised = 0,
    /// <summary>A person has taken it; nobody else need go.</summary>
    Acknowledged,
    /// <summary>It is over.</summary>
    Cleared,
    /// <summary>No alarm: a sheet is sent as planned.</summary>
    Sheet,
}

/// <summary>One message that is owed. The same facts give the same one, so that what is sent again after a crash is known by its id.</summary>
public sealed record Notice
{
    /// <summary>Id for the receiver: the same message has the same id for ever.</summary>
    public Guid Id => TimeOrderedId.Derive(AnnunciatedAt, $"{Alarm:N}/{AnnunciatedAt.UnixMicroseconds}/{Kind}/{Step}/{Channel}/{Person}");

    /// <summary>Id of the occurrence of the alarm.</summary>
    public required Guid Alarm { get; init; }

    /// <summary>Key of the alarm.</summary>
    public required string Key { get; init; }

    /// <summary>What it says.</summary>
    public required NoticeKind Kind { get; init; }

    /// <summary>Priority of the alarm when it was told.</summary>
    public required Priority Priority { get; init; }

    /// <summary>Which annunciation of the occurrence it tells of.</summary>
    public required Instant AnnunciatedAt { get; init; }

    /// <summary>0 for who is on call, then the place in the escalation, from 1.</summary>
    public required int Step { get; init; }

    /// <summary>Id of the channel.</summary>
    public required string Channel { get; init; }

    /// <summary>Id of the person; null where the channel speaks to nobody by name.</summary>
    public string? Person { get; init; }

    /// <summary>Keys of the live alarms that follow from this one, in the order in which they came; they are not told apart from it.</summary>
    public ImmutableArray<string> Consequences { get; init; } = [];
}

/// <summary>What is owed at one time.</summary>
/// <param name="Notices">The messages, the most severe first and of equals the one that came first.</param>
/// <param name="LookAgain">When something more may be owed though nothing changes until then; never when nothing will.</param>
public readonly record struct Owed(ImmutableArray<Notice> Notices, Instant LookAgain);
