using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>Until when a breach has to be answered. All times are common practice; a local code comes first.</summary>
public static class ExceptionDeadlines
{
    /// <summary>A believed probe is back inside: a test by hand within the shift.</summary>
    public static TimeSpan Shift { get; } = TimeSpan.FromHours(8);

    /// <summary>The time to respond as the rules say it: a stop or closure limit at once, that is within a quarter of an hour; an operating limit within the hour.</summary>
    /// <param name="grade">The breach's grade; a laboratory's has its own time, of the plant file.</param>
    /// <param name="resampleWithin">Time to a resample.</param>
    public static TimeSpan Respond(BreachGrade grade, TimeSpan resampleWithin) => grade switch
    {
        BreachGrade.Laboratory => resampleWithin,
        BreachGrade.Operating => TestDeadlines.Repeat,
        _ => TestDeadlines.RepeatAtStop,
    };

    /// <summary>When a retest is due after something was given or changed: within the hour, or as soon as it has mixed, and no later than a value may go untested that no probe watches.</summary>
    public static Instant AfterAction(ExceptionStep action)
    {
        ArgumentNullException.ThrowIfNull(action);
        return Instant.Earlier(Instant.Later(action.At + TestDeadlines.Repeat, action.ReadyAt), action.At + TestDeadlines.WhileBlind);
    }
}
