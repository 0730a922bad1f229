using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>How a line was closed. The default is that it is open.</summary>
public enum Closing
{
    /// <summary>It is open.</summary>
    None = 0,
    /// <summary>A retest is inside everything that is in force.</summary>
    ByRetest,
    /// <summary>The reading was corrected: there was no breach.</summary>
    Corrected,
    /// <summary>A person who may signed that it is settled, with a reason.</summary>
    ByPerson,
    /// <summary>What it was held against is no longer in force.</summary>
    LimitGone,
    /// <summary>Its pool left the circuit with a new plant file.</summary>
    PoolGone,
    /// <summary>What had closed it was corrected, and the breach goes on in a line that was opened since.</summary>
    GoesOn,
}

/// <summary>One breach, one line: reading, action, retest, closed, with names and times. Of a pool and a quantity one line at most is open.</summary>
public sealed record ExceptionLine
{
    /// <summary>UUIDv7.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pool; the circuit itself for a probe in the water that its pools share.</summary>
    public required string PoolId { get; init; }

    /// <summary>What was outside, as the subjects of tests name it: a measurand, a ratio, an organism, or <c>bottom</c>.</summary>
    public required string Quantity { get; init; }

    /// <summary>The gravest it was.</summary>
    public required BreachGrade Grade { get; init; }

    /// <summary>The reading with which it began.</summary>
    public required BreachReading Reading { get; init; }

    /// <summary>What happened since, by the time of happening.</summary>
    public ImmutableArray<ExceptionStep> Steps { get; init; } = [];

    /// <summary>The open incident by whose plan it was raised on purpose, with nobody in the water; null when none was, or that is over.</summary>
    public Guid? IncidentId { get; init; }

    /// <summary>What is owed; nothing once it is closed.</summary>
    public Owed Owed { get; init; }

    /// <summary>How it was closed.</summary>
    public Closing Closing { get; init; }

    /// <summary>Since when: the sample time of the test that closed it, or when the alarm went that held it open after that. Never while open.</summary>
    public Instant ClosedAt { get; init; }

    /// <summary>By whose test or word; null when the plant file did it.</summary>
    public string? ClosedBy { get; init; }

    /// <summary>The person's words; null when there are none.</summary>
    public string? ClosedWhy { get; init; }

    /// <summary>Pool and quantity, as the subject of a test's alarm.</summary>
    public string Key => $"{PoolId}/{Quantity}";

    /// <summary>Somebody owes something.</summary>
    public bool IsOpen => Closing == Closing.None;

    /// <summary>The first that was done about it; null while nothing was.</summary>
    public ExceptionStep? Action => Steps.FirstOrDefault(s => s.IsAction && s.At >= Reading.At);

    /// <summary>The first test after it; null while there was none.</summary>
    public ExceptionStep? Retest => Steps.FirstOrDefault(s => s.IsRetest && s.At >= Reading.At);

    /// <summary>The newest test, when it answers the breach: inside, and of nothing that counts later is there a worse one. Null while it stands.</summary>
    public ExceptionStep? Answer => Steps.LastOrDefault(s => s.IsRetest && s.At >= Reading.At) is { Word: RetestWord.Inside } inside ? inside : null;

    /// <summary>Whole time from the reading to a moment, never negative; null when there is no such moment.</summary>
    public TimeSpan? Until(Instant at) => !at.IsSet ? null : at > Reading.At ? at - Reading.At : TimeSpan.Zero;

    /// <summary>The line rests on a check or report: as its reading, or as a step.</summary>
    public bool RestsOn(Guid id) => Reading.Id == id || Steps.Any(s => s.Id == id && s.Kind is (StepKind.Retest or StepKind.Dose));
}
