using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The exceptions follow what an event has written into the record: checks, doses, reports, closed pools and alarms are the facts that a line is made of.</summary>
internal static class ExceptionFold
{
    private static readonly TimeSpan ClockSkew = TimeSpan.FromMinutes(5);

    /// <summary>An event was folded.</summary>
    /// <param name="draft">The circuit after it.</param>
    /// <param name="happening">The event.</param>
    /// <param name="from">How many rows of the record there were before it.</param>
    public static void Follow(Draft draft, PlantEvent happening, int from)
    {
        var to = draft.EntryCount;
        for (var i = from; i < to; i++) Hear(draft, happening, draft.Entries[i], from, to);
        if (draft.HasFindings) AfterTests(draft, happening);
        if (happening is ClockTicked && !draft.Exceptions.Open.IsEmpty) draft.Exceptions.Tick(draft.Watermark);
    }

    /// <summary>A person says in words what was done.</summary>
    public static Outcome Note(Draft draft, ExceptionNoted said)
    {
        var line = draft.Exceptions.All.FirstOrDefault(l => l.Id == said.LineId);
        if (line is null) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "id", Reason.Of("exception.not_here"));
        if (line.Steps.FirstOrDefault(s => s.Id == said.NoteId) is { } known)
            return known.Kind == StepKind.Words && known.Text == said.Text?.Trim() ? Outcome.AlreadyDone.Instance : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (Objection(said, line) is { } no) return no;
        var done = said.DoneAt.IsSet ? said.DoneAt : said.At;
        draft.Exceptions.Keep(line.With(new(StepKind.Words, said.NoteId, done, said.At, said.By.Trim()) { Text = said.Text.Trim() }), ExceptionChange.Acted, said.At);
        return Outcome.Done.Instance;
    }

    private static Outcome.TurnedDown? Objection(ExceptionNoted said, ExceptionLine line)
    {
        if (string.IsNullOrWhiteSpace(said.By)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(said.Text)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "text", Reason.Of("field.required"));
        var done = said.DoneAt.IsSet ? said.DoneAt : said.At;
        return done < line.Reading.At || done > said.At + ClockSkew ? Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "doneAt", Reason.Of("exception.time_impossible")) : null;
    }

    private static void Hear(Draft draft, PlantEvent happening, RecordEntry entry, int from, int to)
    {
        switch (entry.Body)
        {
            case CheckEntry check:
                BreachByTest.Hear(draft, check, IsDoubted(draft, from, to), entry.At);
                break;
            case AlarmEntry alarm:
                BreachByAlarm.Hear(draft, alarm, entry.At);
                BreachByLab.Hear(draft, alarm, happening, entry.At);
                break;
            case DoseEntry { Dose: var dose } when !draft.KnownDoses.Any(known => known.Corrects == dose.Id):
                BreachActs.Given(draft, dose, entry.At);
                break;
            case PoolStateEntry operated:
                BreachActs.Operated(draft, entry.Subject, operated, entry.At);
                break;
            case FilterEntry wash:
                BreachActs.Washed(draft, wash, entry.At);
                break;
            case IncidentEntry incident:
                BreachWork.InIncident(draft, incident, entry.At);
                break;
            case JobEntry { Job: var job }:
                BreachWork.Worked(draft, job, entry.At);
                break;
            case CalibrationEntry { Calibration: var calibration }:
                BreachWork.Calibrated(draft, calibration, entry.At);
                break;
            case LabResultEntry { Result: var result } when !draft.KnownLabResults.Any(known => known.Corrects == result.Id):
                BreachByLab.Hear(draft, result, entry.At);
                break;
            case PlanEntry:
                AfterPlan(draft, entry.At);
                break;
        }
    }

    private static void AfterTests(Draft draft, PlantEvent happening)
    {
        if (happening is not CheckEntered) BreachByTest.AgainstNewLimits(draft, happening.At);
        draft.Findings.Clear();
    }

    private static void AfterPlan(Draft draft, Instant at)
    {
        foreach (var line in draft.Exceptions.Open)
            if (!BreachKeys.IsHere(draft, line.Key)) draft.Exceptions.Close(line, Closing.PoolGone, at, null);
    }

    private static bool IsDoubted(Draft draft, int from, int to)
    {
        for (var i = from; i < to; i++)
            if (draft.Entries[i].Body is JudgementEntry { Judgement.Verdict: Verdict.CheckSuspect }) return true;
        return false;
    }
}
