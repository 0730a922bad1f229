using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A check takes the place of another one on which lines rest. Nothing vanishes: what was taken back is told, and by whom.</summary>
internal static class BreachCorrections
{
    public static void Take(Draft draft, ManualCheck check, Guid wrong, IReadOnlyList<TestVerdict> verdicts, Instant at)
    {
        foreach (var line in draft.Exceptions.All)
            if (line.RestsOn(wrong)) Take(draft, line, check, wrong, verdicts.FirstOrDefault(v => v.Key == line.Key), at);
    }

    private static void Take(Draft draft, ExceptionLine line, ManualCheck check, Guid wrong, TestVerdict? verdict, Instant at)
    {
        var next = line.Reading.Id == wrong ? ReRead(line, check, verdict, at) : line.Without(wrong);
        // What an open line is answered by comes with the check itself; of a closed one it has to be asked now.
        if (!line.IsOpen && verdict is not null && !next.RestsOn(check.Id) && check.SampledAt >= next.Reading.At) next = next.With(BreachByTest.Retest(check, verdict, at));
        if (next.IsOpen) KeepOrClose(draft, next, check, at);
        else if (next is not { Closing: Closing.ByRetest, Answer: null, Reading.Withdrawn: false }) draft.Exceptions.Keep(next, ExceptionChange.Corrected, at);
        else if (draft.Exceptions.Find(next.Key) is null) draft.Exceptions.Reopen(next, check.Id, at, check.Who);
        else draft.Exceptions.Keep(next with { Closing = Closing.GoesOn }, ExceptionChange.Corrected, at);
    }

    private static ExceptionLine ReRead(ExceptionLine line, ManualCheck check, TestVerdict? verdict, Instant at)
    {
        var step = new ExceptionStep(StepKind.ReadingCorrected, check.Id, at, at, check.Who) { What = line.Reading.Cause, Text = check.CorrectionReason };
        var told = line.Without(line.Reading.Id).With(step);
        return verdict is { IsBreach: true } ? told with { Reading = BreachByTest.Reading(check, verdict, at) with { KnownAt = line.Reading.KnownAt } } : told.BeginningAnew();
    }

    // While its alarm stands the reading is taken back and the water is not: only a test is an answer then.
    private static void KeepOrClose(Draft draft, ExceptionLine line, ManualCheck check, Instant at)
    {
        if (line.Reading.Withdrawn && !BreachKeys.Stands(draft, line.Key, static _ => true)) draft.Exceptions.Close(line, Closing.Corrected, at, check.Who, check.CorrectionReason);
        else BreachByTest.KeepOrClose(draft, line, ExceptionChange.Corrected, at);
    }
}
