using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Reports of the laboratory: the alarm on an organism begins and ends its line, and each report between is a step.</summary>
internal static class BreachByLab
{
    public static void Hear(Draft draft, LabResult result, Instant at)
    {
        var pool = draft.Index.Pool(result.PoolId);
        foreach (var count in result.Counts)
            if (pool >= 0 && draft.Exceptions.Find($"{result.PoolId}/{count.Organism.Key()}") is { } line) Take(draft, pool, line, result, count, at);
    }

    public static void Hear(Draft draft, AlarmEntry entry, PlantEvent happening, Instant at)
    {
        if (entry.Alarm.Rule != RuleBook.LaboratoryOutside.Number) return;
        if (entry.Change == AlarmChange.Raised) Begin(draft, entry.Alarm, happening, at);
        else if (entry.Change is AlarmChange.Cleared or AlarmChange.Retired && draft.Exceptions.Find(entry.Alarm.Subject) is { } line) End(draft, line, happening, at);
    }

    private static void Take(Draft draft, int pool, ExceptionLine line, LabResult result, LabCount count, Instant at)
    {
        var word = LabLimits.Of(draft.Plan.Pools[pool], draft.Pools[pool].Limits, count.Organism)?.Of(count) switch
        {
            LabVerdict.Outside => RetestWord.Outside,
            LabVerdict.Inside => RetestWord.Inside,
            _ => RetestWord.NotProven,
        };
        var next = result.Corrects is { } wrong ? Corrected(line, result, wrong, at) : line;
        next = next.With(new(StepKind.Retest, result.Id, at, at, result.By) { Word = word, Grade = word == RetestWord.Outside ? BreachGrade.Laboratory : BreachGrade.Unknown, What = ActFigures.Counted(count) });
        draft.Exceptions.Keep(next.BeginningAnew(), result.Corrects is null ? ExceptionChange.Retested : ExceptionChange.Corrected, at);
    }

    private static ExceptionLine Corrected(ExceptionLine line, LabResult result, Guid wrong, Instant at) => line.Reading.Id != wrong ? line.Without(wrong)
        : line.Without(wrong).With(new(StepKind.ReadingCorrected, result.Id, at, at, result.By) { What = line.Reading.Cause, Text = result.Note });

    private static void Begin(Draft draft, AlarmRecord alarm, PlantEvent happening, Instant at)
    {
        if (draft.Exceptions.Find(alarm.Subject) is not null || Outside(draft, alarm.Subject) is not { } found) return;
        var by = happening is LabResultEntered said && said.Result.Id == found.ResultId ? said.Result.By : null;
        draft.Exceptions.Begin(alarm.Subject, BreachGrade.Laboratory, new(BreachSource.Laboratory, found.ResultId, alarm.Rule, found.EnteredAt, at, alarm.Cause, by), at);
    }

    private static void End(Draft draft, ExceptionLine line, PlantEvent happening, Instant at)
    {
        if (happening is LabResultClosed closed) draft.Exceptions.Close(line, Closing.ByPerson, at, closed.By, closed.Why);
        else if (line.Reading.Withdrawn && happening is LabResultEntered { Result: var report }) draft.Exceptions.Close(line, Closing.Corrected, at, report.By, report.Note);
        else if (line.Answer is { } answer) draft.Exceptions.Close(line, Closing.ByRetest, at, answer.By);
        else draft.Exceptions.Close(line, Closing.LimitGone, at, null);
    }

    // The oldest of those that stand, as the alarm names it.
    private static LabFinding? Outside(Draft draft, string key)
    {
        var slash = key.LastIndexOf('/');
        var pool = draft.Index.Pool(key[..slash]);
        return pool < 0 ? null : draft.Pools[pool].Laboratory.Where(s => s.Organism.Key() == key[(slash + 1)..] && s.Outside is not null).Select(s => s.Outside!).OrderBy(f => f.SampledAt).FirstOrDefault();
    }
}
