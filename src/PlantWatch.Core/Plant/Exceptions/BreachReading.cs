using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>What showed a breach. The default is not stated.</summary>
public enum BreachSource
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A test by hand, or a look at the bottom.</summary>
    Test,
    /// <summary>A probe that was believed, or that read what no doubt makes safe.</summary>
    Probe,
    /// <summary>A laboratory's report.</summary>
    Laboratory,
}

/// <summary>The reading with which a breach begins.</summary>
/// <param name="Source">What showed it.</param>
/// <param name="Id">The check, the report, or the occurrence of the probe's alarm.</param>
/// <param name="Rule">Number of the gravest rule that it broke.</param>
/// <param name="At">When the sample was taken or the probe's alarm came; for a report when it was entered, for before that nobody could act. Minutes count from here.</param>
/// <param name="KnownAt">When it came in; the time to respond runs from here.</param>
/// <param name="Cause">What was read, against what.</param>
/// <param name="By">Who tested or entered it; null for a probe.</param>
public sealed record BreachReading(BreachSource Source, Guid Id, string Rule, Instant At, Instant KnownAt, Reason Cause, string? By)
{
    /// <summary>How grave it was by itself.</summary>
    public BreachGrade Grade => BreachRules.GradeOf(Rule);

    /// <summary>A correction took it back, and what its alarm stands for still asks for a test.</summary>
    public bool Withdrawn { get; init; }
}
