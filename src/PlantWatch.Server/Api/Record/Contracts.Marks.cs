using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/pools/{id}/marks?from=&to= : MarksView: what happened in or to a pool, for the marks over its strips

/// <summary>What a mark is of.</summary>
public enum MarkKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A test by hand.</summary>
    Test,
    /// <summary>A dose that a person gave.</summary>
    Dose,
    /// <summary>A calibration that came into force.</summary>
    Calibration,
    /// <summary>Work on a probe, or a correction of its record.</summary>
    Probe,
    /// <summary>An alarm that was raised.</summary>
    Alarm,
    /// <summary>A filter washed or a strainer emptied.</summary>
    Wash,
    /// <summary>A delivery, a refill or a count of chemicals.</summary>
    Stock,
    /// <summary>A job of maintenance.</summary>
    Job,
    /// <summary>The pool opened, closed, covered or drained, or an incident.</summary>
    Pool,
    /// <summary>A laboratory's report.</summary>
    Laboratory,
    /// <summary>Something was lost or may have been.</summary>
    Gap,
    /// <summary>The plant file changed.</summary>
    Plan,
}

/// <summary>Marks of a time.</summary>
/// <param name="Marks">Oldest first.</param>
/// <param name="More">There are more in this time: the newest are told.</param>
public sealed record MarksView(IReadOnlyList<MarkView> Marks, bool More);

/// <summary>Something that happened.</summary>
/// <param name="Id">Its row of the record, or the alarm.</param>
/// <param name="Kind">What it is.</param>
/// <param name="At">When.</param>
/// <param name="Until">When it was over; null for a moment and for what is not over.</param>
/// <param name="Subject">Id of what it is about.</param>
/// <param name="SubjectName">What people call that.</param>
/// <param name="Text">What it says.</param>
/// <param name="By">Who; null when the plant did it.</param>
public sealed record MarkView(Guid Id, MarkKind Kind, Instant At, Instant? Until, string Subject, string SubjectName, string Text, string? By);
