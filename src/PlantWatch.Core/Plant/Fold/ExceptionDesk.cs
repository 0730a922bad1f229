using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The exceptions of a circuit while a batch is folded: every change is written into the record, and says anew what is owed.</summary>
internal sealed class ExceptionDesk(ImmutableArray<ExceptionLine> open, ImmutableArray<ExceptionLine> closed, Draft draft)
{
    // What closed them may be corrected within the day or two; older lines are found in the record.
    private const int ClosedKept = 32;

    public ImmutableArray<ExceptionLine> Open { get; private set; } = open;

    public ImmutableArray<ExceptionLine> Closed { get; private set; } = closed;

    /// <summary>All that are known here, as they stand now.</summary>
    public ImmutableArray<ExceptionLine> All => [.. Open, .. Closed];

    /// <summary>The open line of a pool and quantity; null when none is open.</summary>
    public ExceptionLine? Find(string key)
    {
        foreach (var line in Open)
            if (line.Key == key) return line;
        return null;
    }

    public void Adopt(ImmutableArray<ExceptionLine> carriedOpen, ImmutableArray<ExceptionLine> carriedClosed) => (Open, Closed) = (carriedOpen, carriedClosed);

    /// <summary>A breach begins.</summary>
    public ExceptionLine Begin(string key, BreachGrade grade, BreachReading reading, Instant at)
    {
        var slash = key.LastIndexOf('/');
        var raised = BreachRaised.For(draft, key[..slash], key[(slash + 1)..], reading);
        var begun = new ExceptionLine { Id = draft.NewId(at), PoolId = key[..slash], Quantity = key[(slash + 1)..], Grade = grade, Reading = reading, IncidentId = raised?.Id };
        var line = Owing(raised is null ? begun : begun.With(BreachRaised.StepOf(raised, at)));
        Open = Open.Add(line);
        Write(line, ExceptionChange.Opened, at);
        return line;
    }

    /// <summary>A line changed. One that is closed stays closed.</summary>
    public ExceptionLine Keep(ExceptionLine changed, ExceptionChange change, Instant at)
    {
        var line = Owing(changed);
        if (line.IsOpen) Open = Replace(Open, line);
        else Closed = Replace(Closed, line);
        Write(line, change, at);
        if (!line.IsOpen) WriteClosed(line, at);
        return line;
    }

    public void Close(ExceptionLine line, Closing how, Instant at, string? by, string? why = null) => Close(line.Closed(how, at, by, why), at);

    /// <summary>A line is closed, since when and by whom it says itself.</summary>
    public void Close(ExceptionLine done, Instant at)
    {
        Open = Open.RemoveAll(l => l.Id == done.Id);
        Closed = Closed.Length < ClosedKept ? Closed.Add(done) : Closed.RemoveAt(0).Add(done);
        Write(done, ExceptionChange.Closed, at);
        WriteClosed(done, at);
        Overdue(done, false, at);
    }

    public void Reopen(ExceptionLine line, Guid id, Instant at, string? by)
    {
        Closed = Closed.RemoveAll(l => l.Id == line.Id);
        Open = Open.Add(Owing(line.Reopened(id, at, by)));
        Write(Open[^1], ExceptionChange.Reopened, at);
    }

    /// <summary>Time went on. A laboratory's clock has rules of its own.</summary>
    public void Tick(Instant now)
    {
        foreach (var line in Open)
            if (line.Grade != BreachGrade.Laboratory) Overdue(line, line.Owed.IsOverdue(now) || StandsStill(line), now);
    }

    // It has called, and the only answer was a test that is outside too: that is the same lapse, and calls nobody anew every hour.
    private bool StandsStill(ExceptionLine line) =>
        line.Owed.Act == OwedAct.ActAndRetest && draft.Alarms.Find(RuleBook.ExceptionOverdue.KeyFor(line.Key)) is { Active: true } alarm
        && !line.Steps.Any(s => (s.IsAction || s.Word == RetestWord.Inside) && !s.Withdrawn && s.KnownAt >= alarm.RaisedAt);

    private void Overdue(ExceptionLine line, bool isOverdue, Instant now)
    {
        var key = RuleBook.ExceptionOverdue.KeyFor(line.Key);
        // Whoever says what was done changes what is owed next, and not that it is late: a call that was answered so is not made again.
        var standing = draft.Alarms.Find(key);
        if (isOverdue || standing is not null)
            draft.Alarms.Look(RuleBook.ExceptionOverdue, key, line.Key, isOverdue, now, () => standing is { Active: true } ? standing.Cause : Reason.Of(CodeOf(line.Owed.Act), NameOf(line), line.Quantity, (line.Owed.By - line.Reading.At).TotalMinutes));
    }

    private static string CodeOf(OwedAct act) => act switch
    {
        OwedAct.ActAndRetest => "exception.overdue_act",
        OwedAct.Settle => "exception.overdue_settle",
        _ => "exception.overdue_retest",
    };

    private string NameOf(ExceptionLine line) => draft.Index.Pool(line.PoolId) is >= 0 and var pool ? draft.Plan.Pools[pool].Name : draft.Plan.Name;

    private ExceptionLine Owing(ExceptionLine line) => line with
    {
        Owed = ExceptionDebts.Of(line, (draft.Index.Pool(line.PoolId) is >= 0 and var pool ? draft.Plan.Pools[pool].Laboratory : LabPlan.None).ResampleWithin),
    };

    private static ImmutableArray<ExceptionLine> Replace(ImmutableArray<ExceptionLine> all, ExceptionLine line) => [.. all.Select(l => l.Id == line.Id ? line : l)];

    private void Write(ExceptionLine line, ExceptionChange change, Instant at) => draft.Write(at, at, line.PoolId, new ExceptionEntry(line, change));

    private void WriteClosed(ExceptionLine line, Instant at) => draft.Write(at, line.Reading.At, line.PoolId, new ExceptionClosedEntry(line));
}
