using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/exceptions?pool=&month=YYYY-MM&page=&size= : ExceptionsView, what is open first
//      GET /api/v1/exceptions.csv?pool=&month=             one breach a row; without a month all that is in the record
//      POST /api/v1/exceptions/{id}/notes  ExceptionNote   -> ExceptionView

/// <summary>The exceptions: each breach one line.</summary>
/// <param name="Month">The month that was asked for; null for all of them.</param>
/// <param name="Open">What stands open, whatever the month: what is due soonest first.</param>
/// <param name="Closed">A page of what was closed, by the time of the reading, newest first.</param>
/// <param name="Page">Which page, from 1.</param>
/// <param name="Pages">How many there are.</param>
/// <param name="Count">How many were closed in all.</param>
public sealed record ExceptionsView(string? Month, IReadOnlyList<ExceptionView> Open, IReadOnlyList<ExceptionView> Closed, int Page, int Pages, int Count);

/// <summary>A breach from reading to closing.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Circuit">The circuit.</param>
/// <param name="PoolId">The pool; null for water that all pools of the circuit share.</param>
/// <param name="Place">The pool, or the circuit, in words.</param>
/// <param name="Quantity">What was outside: a measurand, a ratio, an organism, or bottom.</param>
/// <param name="Name">That in words.</param>
/// <param name="Grade">operating, closure, stop, laboratory: the gravest it was.</param>
/// <param name="Rule">Number of the rule that the reading broke.</param>
/// <param name="RuleTitle">That rule in words.</param>
/// <param name="Source">test, probe, laboratory.</param>
/// <param name="Reading">What was read against what.</param>
/// <param name="ReadAt">When; minutes count from here.</param>
/// <param name="ReadBy">Who; null for a probe.</param>
/// <param name="ReadingWithdrawn">A correction took the reading back.</param>
/// <param name="Owed">Who owes what by when; null once it is closed.</param>
/// <param name="Action">The first that was done; null while nothing was.</param>
/// <param name="Retest">The first test after it; null while there was none.</param>
/// <param name="Closing">none, by_retest, corrected, by_person, limit_gone, pool_gone, goes_on.</param>
/// <param name="ClosedAt">When.</param>
/// <param name="ClosedBy">Who.</param>
/// <param name="ClosedWhy">The person's words.</param>
/// <param name="MinutesToClosing">From the reading.</param>
/// <param name="Steps">All steps, by the time of happening.</param>
public sealed record ExceptionView(
    Guid Id, string Circuit, string? PoolId, string Place, string Quantity, string Name, BreachGrade Grade, string Rule, string RuleTitle, BreachSource Source, Said Reading, Instant ReadAt, string? ReadBy,
    bool ReadingWithdrawn, OwedView? Owed, ExceptionStepView? Action, ExceptionStepView? Retest, Closing Closing, Instant? ClosedAt, string? ClosedBy, string? ClosedWhy, double? MinutesToClosing,
    IReadOnlyList<ExceptionStepView> Steps);

/// <summary>What an open line waits for.</summary>
/// <param name="Act">act_and_retest, retest, settle, resample, incident.</param>
/// <param name="By">Until when; null while the clock of an incident runs instead.</param>
/// <param name="Overdue">That is past.</param>
/// <param name="Who">Who had it in hand last; null while nobody has: the operator on duty.</param>
public sealed record OwedView(OwedAct Act, Instant? By, bool Overdue, string? Who);

/// <summary>A step.</summary>
/// <param name="Kind">seen, words, dose, pool_closed, new_water, filter_washed, retest, reading, back_inside, reading_corrected, reopened, incident, job, calibrated, incident_over.</param>
/// <param name="Id">The check, dose, act or note.</param>
/// <param name="At">When it happened.</param>
/// <param name="Minutes">From the reading.</param>
/// <param name="By">Who; null when the plant did it.</param>
/// <param name="Word">For a retest: inside, at_limit, outside, not_proven; else none.</param>
/// <param name="What">What was tested or given.</param>
/// <param name="Text">The person's words.</param>
/// <param name="Withdrawn">A correction took it back.</param>
/// <param name="IsAction">Something was done.</param>
public sealed record ExceptionStepView(StepKind Kind, Guid Id, Instant At, double Minutes, string? By, RetestWord Word, Said? What, string? Text, bool Withdrawn, bool IsAction);

/// <summary>A person says what was done, where no dose, test, wash or closed pool can tell.</summary>
/// <param name="Id">UUIDv7 made by the client, so that sending it twice is harmless.</param>
/// <param name="By">Who.</param>
/// <param name="Text">What was done.</param>
/// <param name="DoneAt">When; null for now.</param>
public sealed record ExceptionNote(Guid Id, string? By, string? Text, Instant? DoneAt);
