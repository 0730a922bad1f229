using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.WhatIf;

namespace PlantWatch.Server.Api;

// ---- GET    /api/v1/what-if/limits          WhatIfLimitsChoices
//      POST   /api/v1/what-if/limits          WhatIfLimitsRequest -> WhatIfLimitsRun (202), Problem (400, 429)
//      GET    /api/v1/what-if/limits/{id}     WhatIfLimitsRun
//      DELETE /api/v1/what-if/limits/{id}     WhatIfLimitsRun, cancelled unless it had ended

/// <summary>What can be asked, and what is in force.</summary>
/// <param name="RecordBegins">The record begins here; null when there is none.</param>
/// <param name="Now">Server time.</param>
/// <param name="LongestDays">The longest time that is replayed.</param>
/// <param name="MayLoosen">Who may stand for a limit that is looser than the pack.</param>
/// <param name="Pools">The pools.</param>
public sealed record WhatIfLimitsChoices(Instant? RecordBegins, Instant Now, double LongestDays, IReadOnlyList<string> MayLoosen, IReadOnlyList<WhatIfLimitsPool> Pools);

/// <summary>A pool and what can be limited in it.</summary>
public sealed record WhatIfLimitsPool(string Id, string Name, IReadOnlyList<WhatIfLimitsQuantity> Quantities);

/// <summary>A quantity and how it is limited now. Figures are in its own unit.</summary>
/// <param name="Measurand">What is limited.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">Unit, with the basis where it has one.</param>
/// <param name="Watched">A probe watches it all the time; else only tests by hand are held against it.</param>
/// <param name="Low">Lowest value in force; null when there is none.</param>
/// <param name="LowFrom">The row of the pack it comes from; empty for the plant's own.</param>
/// <param name="High">Highest value in force.</param>
/// <param name="HighFrom">The row it comes from.</param>
/// <param name="OwnLow">What the plant file says.</param>
/// <param name="OwnHigh">What the plant file says.</param>
/// <param name="Stop">The stop that always holds; null when there is none.</param>
/// <param name="Deadband">How far a probe must come back inside where the plant file does not say it.</param>
/// <param name="OnDelaySeconds">How long it must be outside, likewise.</param>
/// <param name="OffDelaySeconds">How long it must be back inside, likewise.</param>
/// <param name="OwnDeadband">What the plant file says.</param>
/// <param name="OwnOnDelaySeconds">What the plant file says.</param>
/// <param name="OwnOffDelaySeconds">What the plant file says.</param>
/// <param name="Source">Where the plant's own limit was taken from; null without one.</param>
public sealed record WhatIfLimitsQuantity(
    Measurand Measurand, string Name, string Unit, bool Watched, double? Low, string LowFrom, double? High, string HighFrom, double? OwnLow, double? OwnHigh, ValueRange? Stop,
    double Deadband, double OnDelaySeconds, double OffDelaySeconds, double? OwnDeadband, double? OwnOnDelaySeconds, double? OwnOffDelaySeconds, string? Source);

/// <summary>A question: how the alarms of a time would have been under other limits.</summary>
/// <param name="From">Start, included.</param>
/// <param name="To">End, excluded; never means now.</param>
/// <param name="Changes">The limits as they might be.</param>
public sealed record WhatIfLimitsRequest(Instant From, Instant To, IReadOnlyList<WhatIfLimit>? Changes);

/// <summary>The plant's own limit on a quantity of a pool, as it might be. What is left out is as without an own limit.</summary>
public sealed record WhatIfLimit
{
    /// <summary>The pool.</summary>
    public string? Pool { get; init; }
    /// <summary>What is limited.</summary>
    public Measurand? Measurand { get; init; }
    /// <summary>Lowest acceptable value.</summary>
    public double? Low { get; init; }
    /// <summary>Highest acceptable value.</summary>
    public double? High { get; init; }
    /// <summary>Deadband in the quantity's unit.</summary>
    public double? Deadband { get; init; }
    /// <summary>On-delay in seconds.</summary>
    public double? OnDelaySeconds { get; init; }
    /// <summary>Off-delay in seconds.</summary>
    public double? OffDelaySeconds { get; init; }
    /// <summary>Document and clause it is taken from; the present one when left out.</summary>
    public string? Source { get; init; }
    /// <summary>Who stands for it where it is looser than the pack.</summary>
    public string? LoosenedBy { get; init; }
    /// <summary>Why it is looser.</summary>
    public string? LoosenedWhy { get; init; }
}

/// <summary>A run.</summary>
/// <param name="Id">Its id.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Ahead">How many come before it.</param>
/// <param name="Progress">How much is done, 0 to 1.</param>
/// <param name="AskedAt">When it was asked for.</param>
/// <param name="From">Start of the time.</param>
/// <param name="To">Its end.</param>
/// <param name="Lines">The changed limits as lines of the plant file, for a person to copy.</param>
/// <param name="Result">What came out; null before.</param>
/// <param name="Fault">Why it could not be done; null when it could.</param>
public sealed record WhatIfLimitsRun(
    Guid Id, RunState State, int Ahead, double Progress, Instant AskedAt, Instant From, Instant To, IReadOnlyList<WhatIfLimitsLine> Lines, WhatIfLimitsResult? Result, Said? Fault);

/// <summary>A line of the plant file.</summary>
/// <param name="Pool">Under the limits of this pool.</param>
/// <param name="PoolName">In words.</param>
/// <param name="Line">The line.</param>
public sealed record WhatIfLimitsLine(string Pool, string PoolName, string Line);

/// <summary>What came out of a run.</summary>
/// <param name="Before">As the plan stands.</param>
/// <param name="After">With the changes.</param>
/// <param name="LostCount">Alarms that would not have come.</param>
/// <param name="GainedCount">Alarms that would have come in addition.</param>
/// <param name="Same">Alarms as the plan stands that come on both sides.</param>
/// <param name="LostCritical">Of the lost, those that ask for closing.</param>
/// <param name="Rules">By rule.</param>
/// <param name="Lost">The first of the lost, by time.</param>
/// <param name="Gained">The first of the gained.</param>
/// <param name="Recorded">Alarms that the record holds from the time itself.</param>
/// <param name="FoundAgain">How many of them the replay as the plan stands finds again.</param>
/// <param name="NotRecorded">How many it finds that the record does not hold.</param>
/// <param name="Readings">Readings replayed, run-in included.</param>
/// <param name="Seconds">How long it took.</param>
/// <param name="Notes">What has to be said of it.</param>
public sealed record WhatIfLimitsResult(
    WhatIfLimitsSide Before, WhatIfLimitsSide After, int LostCount, int GainedCount, int Same, int LostCritical, IReadOnlyList<WhatIfLimitsRule> Rules,
    IReadOnlyList<WhatIfLimitsAlarm> Lost, IReadOnlyList<WhatIfLimitsAlarm> Gained, int Recorded, int FoundAgain, int NotRecorded, long Readings, double Seconds, IReadOnlyList<Said> Notes);

/// <summary>One side.</summary>
/// <param name="Alarms">How many alarms came.</param>
/// <param name="StoodHours">How long they stood, added up.</param>
/// <param name="Told">How often somebody was called.</param>
/// <param name="PerHour">Calls an hour.</param>
/// <param name="Figures">The health of the alarms, beside the figures of the standards.</param>
public sealed record WhatIfLimitsSide(int Alarms, double StoodHours, int Told, double PerHour, IReadOnlyList<HealthFigure> Figures);

/// <summary>Counts of a rule.</summary>
public sealed record WhatIfLimitsRule(string Rule, string Title, Priority Priority, int Before, int After, int Lost, int Gained, double HoursBefore, double HoursAfter);

/// <summary>An alarm that was lost or gained.</summary>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Title">The rule in words.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="SubjectName">In words.</param>
/// <param name="Pool">The pool it is about; null when it is about none.</param>
/// <param name="Priority">Its priority.</param>
/// <param name="From">When it came.</param>
/// <param name="To">When it ended; null while it stands at the end.</param>
/// <param name="Minutes">How long it stood within the time.</param>
/// <param name="Called">Somebody was called by it.</param>
/// <param name="Cause">Why, with the value.</param>
public sealed record WhatIfLimitsAlarm(
    string Rule, string Title, string Subject, string SubjectName, string? Pool, Priority Priority, Instant From, Instant? To, double Minutes, bool Called, Said Cause);
