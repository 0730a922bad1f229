using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>Who owes what by when: told from the reading and the steps alone, so that the same course always owes the same.</summary>
public static class ExceptionDebts
{
    /// <summary>What a line owes.</summary>
    /// <param name="line">The line.</param>
    /// <param name="resampleWithin">Time to a resample by the plant file.</param>
    public static Owed Of(ExceptionLine line, TimeSpan resampleWithin)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (!line.IsOpen) return default;
        if (line.IncidentId is not null) return new(OwedAct.Incident, Instant.Never, line.Steps.LastOrDefault(s => s.By is not null)?.By ?? line.Reading.By);
        var owed = new Owed(OwedAct.ActAndRetest, line.Reading.KnownAt + ExceptionDeadlines.Respond(line.Reading.Grade, resampleWithin), line.Reading.By);
        var acted = Instant.Never;
        foreach (var step in line.Steps)
        {
            if (step.Withdrawn) continue;
            if (step.Kind == StepKind.Retest) acted = Instant.Never;
            var before = owed.By;
            owed = After(owed, line, step, resampleWithin);
            if (!IsAction(step.Kind)) continue;
            // However often something is given, from the first of it on nobody waits longer than that with a test.
            acted = acted.IsSet ? acted : step.At;
            owed = owed with { By = Instant.Earlier(owed.By, Instant.Later(before, acted + TestDeadlines.WhileBlind)) };
        }

        return line.Grade == BreachGrade.Laboratory ? owed with { Act = OwedAct.Resample } : owed;
    }

    private static bool IsAction(StepKind kind) => kind is StepKind.Dose or StepKind.NewWater or StepKind.FilterWashed;

    private static Owed After(Owed owed, ExceptionLine line, ExceptionStep step, TimeSpan resampleWithin)
    {
        owed = owed with { Who = step.By ?? owed.Who };
        return step.Kind switch
        {
            StepKind.Retest => AfterTest(owed, line, step, resampleWithin),
            // What is given or changed needs its time; words and a closed pool do not move the clock.
            var kind when IsAction(kind) => owed with { Act = OwedAct.Retest, By = line.Grade == BreachGrade.Laboratory ? owed.By : Instant.Later(owed.By, ExceptionDeadlines.AfterAction(step)) },
            // What was raised on purpose is so no longer: the clock begins here.
            StepKind.IncidentOver => owed with { Act = OwedAct.ActAndRetest, By = step.KnownAt + ExceptionDeadlines.Respond(line.Grade, resampleWithin) },
            // It became graver: whoever had an hour has not got it any more.
            StepKind.Reading => owed with { Act = OwedAct.ActAndRetest, By = Instant.Earlier(owed.By, step.KnownAt + ExceptionDeadlines.Respond(step.Grade, resampleWithin)) },
            StepKind.Words or StepKind.PoolClosed or StepKind.Incident or StepKind.Job or StepKind.Calibrated => owed with { Act = OwedAct.Retest },
            StepKind.BackInside when line.Grade == BreachGrade.Operating => owed with { Act = OwedAct.Retest, By = Instant.Later(owed.By, step.At + ExceptionDeadlines.Shift) },
            _ => owed,
        };
    }

    // Of a laboratory's finding the first clock runs on: another sample outside is no answer.
    private static Owed AfterTest(Owed owed, ExceptionLine line, ExceptionStep step, TimeSpan resampleWithin)
    {
        if (line.Grade == BreachGrade.Laboratory) return owed;
        return step.Word switch
        {
            RetestWord.Outside or RetestWord.AtLimit => owed with { Act = OwedAct.ActAndRetest, By = step.KnownAt + ExceptionDeadlines.Respond(step.Grade, resampleWithin) },
            RetestWord.Inside => owed with { Act = OwedAct.Settle, By = step.KnownAt + ExceptionDeadlines.Respond(line.Grade, resampleWithin) },
            _ => owed with { Act = OwedAct.Retest },
        };
    }
}
