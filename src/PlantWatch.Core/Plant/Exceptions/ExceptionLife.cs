using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>How a line moves. Pure: time is an argument, and nothing that was once told is left out.</summary>
public static class ExceptionLife
{
    // A line that stands for weeks: the record holds every step, the state the first and the newest ones.
    private const int StepsKept = 64;

    /// <summary>Something happened.</summary>
    public static ExceptionLine With(this ExceptionLine line, ExceptionStep step)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(step);
        var place = line.Steps.Length;
        while (place > 0 && line.Steps[place - 1].At > step.At) place--;
        var steps = line.Steps.Insert(place, step);
        return line with { Steps = steps.Length > StepsKept ? steps.RemoveAt(StepsKept / 2) : steps };
    }

    /// <summary>It is at least so grave.</summary>
    public static ExceptionLine AtLeast(this ExceptionLine line, BreachGrade grade)
    {
        ArgumentNullException.ThrowIfNull(line);
        return grade > line.Grade ? line with { Grade = grade } : line;
    }

    /// <summary>It began sooner than was known: what was its reading is a step now.</summary>
    public static ExceptionLine BeganWith(this ExceptionLine line, BreachReading sooner)
    {
        ArgumentNullException.ThrowIfNull(line);
        var was = line.Reading;
        var step = new ExceptionStep(was.Source == BreachSource.Test ? StepKind.Retest : StepKind.Reading, was.Id, was.At, was.KnownAt, was.By)
        {
            Grade = was.Grade, What = was.Cause, Word = was.Source == BreachSource.Test ? RetestWord.Outside : RetestWord.None, Withdrawn = was.Withdrawn,
        };
        return (line with { Reading = sooner }).With(step);
    }

    /// <summary>A check, report or dose was taken back: what it was stays to be seen, and counts for nothing.</summary>
    public static ExceptionLine Without(this ExceptionLine line, Guid id)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line with
        {
            Reading = line.Reading.Id == id ? line.Reading with { Withdrawn = true } : line.Reading,
            Steps = [.. line.Steps.Select(s => s.Id == id && s.Kind is (StepKind.Retest or StepKind.Dose) ? s with { Withdrawn = true } : s)],
        };
    }

    /// <summary>Its reading was taken back, and a later test had shown the breach too: it begins there. Unchanged where there was none.</summary>
    public static ExceptionLine BeginningAnew(this ExceptionLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (!line.Reading.Withdrawn || line.Steps.FirstOrDefault(s => s.IsBreach) is not { What: { } what } step) return line;
        return line with { Reading = new(BreachSource.Test, step.Id, line.Reading.Rule, step.At, step.KnownAt, what, step.By), Steps = line.Steps.Remove(step) };
    }

    /// <summary>It is closed, and nobody owes anything.</summary>
    public static ExceptionLine Closed(this ExceptionLine line, Closing how, Instant at, string? by, string? why = null)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line with { Closing = how, ClosedAt = at, ClosedBy = by, ClosedWhy = why, Owed = default };
    }

    /// <summary>What closed it was taken back.</summary>
    public static ExceptionLine Reopened(this ExceptionLine line, Guid id, Instant at, string? by)
    {
        ArgumentNullException.ThrowIfNull(line);
        return (line with { Closing = Closing.None, ClosedAt = Instant.Never, ClosedBy = null, ClosedWhy = null }).With(new(StepKind.Reopened, id, at, at, by));
    }
}
