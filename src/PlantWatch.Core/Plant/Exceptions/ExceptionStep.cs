using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>What happened in the course of a breach. The default is not stated.</summary>
public enum StepKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A person acknowledged the alarm and said nothing: seen, not acted.</summary>
    Seen,
    /// <summary>A person said in words what was done.</summary>
    Words,
    /// <summary>A dose that moves the quantity was given.</summary>
    Dose,
    /// <summary>Bathers were kept out.</summary>
    PoolClosed,
    /// <summary>The pool was filled anew.</summary>
    NewWater,
    /// <summary>A filter was washed.</summary>
    FilterWashed,
    /// <summary>The quantity was tested again.</summary>
    Retest,
    /// <summary>Another reading of the same breach.</summary>
    Reading,
    /// <summary>The probe came back inside by itself: no proof, only a longer time for the test.</summary>
    BackInside,
    /// <summary>The reading was corrected.</summary>
    ReadingCorrected,
    /// <summary>What had closed the line was taken back.</summary>
    Reopened,
    /// <summary>An incident of this water: declared, noted, or what was raised for it.</summary>
    Incident,
    /// <summary>A job on the probe, pump, filter or pool that it is about was taken in hand or done.</summary>
    Job,
    /// <summary>The probe of the quantity was calibrated, or its panel adjusted.</summary>
    Calibrated,
    /// <summary>The incident is over for which it was raised, or bathers come back: from here on it is owed.</summary>
    IncidentOver,
}

/// <summary>How a retest stands against what is in force. The default is that the step is no retest.</summary>
public enum RetestWord
{
    /// <summary>No retest.</summary>
    None = 0,
    /// <summary>Inside everything that is in force, and not in doubt.</summary>
    Inside,
    /// <summary>Outside by less than the test can tell.</summary>
    AtLimit,
    /// <summary>Outside.</summary>
    Outside,
    /// <summary>In doubt, or past the range of its method: it proves nothing.</summary>
    NotProven,
}

/// <summary>One thing that happened in the course of a breach: a fact of the journal, by whom and when.</summary>
/// <param name="Kind">What.</param>
/// <param name="Id">The check, dose, act or note it was.</param>
/// <param name="At">When it happened: the sample time of a test.</param>
/// <param name="KnownAt">When it came in.</param>
/// <param name="By">Who; null when the plant did it.</param>
public sealed record ExceptionStep(StepKind Kind, Guid Id, Instant At, Instant KnownAt, string? By)
{
    /// <summary>How a retest stands.</summary>
    public RetestWord Word { get; init; }

    /// <summary>The gravest that it broke, for a test or reading outside; unknown for the others.</summary>
    public BreachGrade Grade { get; init; }

    /// <summary>What was tested or given, with its figures; null where there are none.</summary>
    public Reason? What { get; init; }

    /// <summary>The person's own words.</summary>
    public string? Text { get; init; }

    /// <summary>From when a retest can show it; never when that is at once.</summary>
    public Instant ReadyAt { get; init; }

    /// <summary>A correction took it back: it is still shown, and counts for nothing.</summary>
    public bool Withdrawn { get; init; }

    /// <summary>Something was done about the breach.</summary>
    public bool IsAction => !Withdrawn && Kind is (StepKind.Words or StepKind.Dose or StepKind.PoolClosed or StepKind.NewWater or StepKind.FilterWashed or StepKind.Incident or StepKind.Job or StepKind.Calibrated);

    /// <summary>A test that counts.</summary>
    public bool IsRetest => !Withdrawn && Kind == StepKind.Retest;

    /// <summary>A test that showed the breach again.</summary>
    public bool IsBreach => IsRetest && Word is (RetestWord.Outside or RetestWord.AtLimit);
}
