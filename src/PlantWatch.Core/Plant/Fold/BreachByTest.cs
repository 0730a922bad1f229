using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Tests by hand begin breaches, answer them, and show them again.</summary>
internal static class BreachByTest
{
    public static void Hear(Draft draft, CheckEntry entry, bool isDoubted, Instant at)
    {
        // Its correction came first: nothing rests on it.
        if (draft.KnownChecks.Any(known => known.Corrects == entry.Check.Id)) return;
        var verdicts = TestVerdict.Of(draft, entry, isDoubted);
        if (entry.Check.Corrects is { } wrong) BreachCorrections.Take(draft, entry.Check, wrong, verdicts, at);
        foreach (var verdict in verdicts) Take(draft, entry.Check, verdict, at);
    }

    /// <summary>Limits came into force, and the newest tests were held against them.</summary>
    public static void AgainstNewLimits(Draft draft, Instant at)
    {
        foreach (var found in draft.Findings.Where(f => BreachRules.GradeOf(f.Rule.Number) != BreachGrade.Unknown).GroupBy(f => f.Subject).Select(g => TestVerdict.Of(g.Key, [.. g])).ToArray())
            if (found.IsBreach && draft.Exceptions.Find(found.Key) is null && Known(draft, found.Key) is { } value)
                draft.Exceptions.Begin(found.Key, found.Grade, new(BreachSource.Test, value.CheckId, found.Rule, value.SampledAt, at, found.Cause!, null), at);
    }

    public static BreachReading Reading(ManualCheck check, TestVerdict verdict, Instant at) => new(BreachSource.Test, check.Id, verdict.Rule, check.SampledAt, at, verdict.Cause!, check.Who);

    public static ExceptionStep Retest(ManualCheck check, TestVerdict verdict, Instant at) =>
        new(StepKind.Retest, check.Id, check.SampledAt, at, check.Who) { Word = verdict.Word, Grade = verdict.Grade, What = verdict.Cause ?? BreachWords.Tested(check, verdict.Key) };

    /// <summary>A line changed: it is closed when its newest test is inside and no alarm keeps it open.</summary>
    /// <param name="draft">The circuit.</param>
    /// <param name="line">The line after the change.</param>
    /// <param name="change">What happened to it.</param>
    /// <param name="at">When that came in.</param>
    /// <param name="heldUntil">When the alarm went that held it open; never when none did, and then it is closed since its test was sampled.</param>
    public static void KeepOrClose(Draft draft, ExceptionLine line, ExceptionChange change, Instant at, Instant heldUntil = default)
    {
        if (line.Answer is { } answer && !BreachKeys.IsHeldOpen(draft, line)) draft.Exceptions.Close(line.Closed(Closing.ByRetest, Instant.Later(answer.At, heldUntil), answer.By), at);
        else draft.Exceptions.Keep(line, change, at);
    }

    private static void Take(Draft draft, ManualCheck check, TestVerdict verdict, Instant at)
    {
        if (draft.Exceptions.Find(verdict.Key) is { } own) GoOn(draft, own, check, verdict, at);
        else if (verdict.IsBreach && !draft.Exceptions.Closed.Any(l => l.Key == verdict.Key && l.RestsOn(check.Id))) Begin(draft, check, verdict, at);
        foreach (var key in BreachKeys.AnsweredBy(draft, verdict.Key))
            if (draft.Exceptions.Find(key) is { } other && check.SampledAt >= other.Reading.At) Answer(draft, other, check, verdict, at);
    }

    private static void Begin(Draft draft, ManualCheck check, TestVerdict verdict, Instant at)
    {
        var line = BreachActs.LookBack(draft, draft.Exceptions.Begin(verdict.Key, verdict.Grade, Reading(check, verdict, at), at), at);
        // Told late, and somebody has tested since.
        if (Known(draft, verdict.Key) is not { } newer || newer.SampledAt <= check.SampledAt) return;
        var (plan, pool) = (draft.Plan.Pools[draft.Index.Pool(check.PoolId)], draft.Pools[draft.Index.Pool(check.PoolId)]);
        var said = TestVerdict.Of(verdict.Key, [.. TestAgainst.All(draft.Plan, plan, pool.Limits, newer.Result).Select(f => f with { MayClear = f.MayClear && !IsDoubted(pool, newer) })]);
        var step = new ExceptionStep(StepKind.Retest, newer.CheckId, newer.SampledAt, at, null) { Word = said.Word, Grade = said.Grade, What = said.Cause ?? ActFigures.Tested(newer.Result) };
        KeepOrClose(draft, line.With(step), ExceptionChange.Retested, at);
    }

    // Doubted in itself, or since it stands alone against its probe.
    private static bool IsDoubted(PoolState pool, ManualValue test) =>
        test.Suspect || (!pool.Doubts.IsDefaultOrEmpty && pool.Doubts.Any(d => d.Measurand == test.Result.Measurand));

    private static void GoOn(Draft draft, ExceptionLine line, ManualCheck check, TestVerdict verdict, Instant at)
    {
        if (line.RestsOn(check.Id)) return;
        if (check.SampledAt >= line.Reading.At) Answer(draft, line, check, verdict, at);
        else if (verdict.IsBreach)
            BreachActs.LookBack(draft, draft.Exceptions.Keep(line.BeganWith(Reading(check, verdict, at)).AtLeast(verdict.Grade), ExceptionChange.Retested, at), at);
    }

    private static void Answer(Draft draft, ExceptionLine line, ManualCheck check, TestVerdict verdict, Instant at) =>
        KeepOrClose(draft, AskedAgain(draft, line.With(Retest(check, verdict, at)), check, verdict, at).AtLeast(verdict.Grade).BeginningAnew(), ExceptionChange.Retested, at);

    // What was sampled later has the word, in whatever order they come in.
    private static ExceptionLine AskedAgain(Draft draft, ExceptionLine line, ManualCheck check, TestVerdict verdict, Instant at) =>
        verdict.IsBreach && !line.Steps.Any(s => s.IsRetest && s.At > check.SampledAt) ? BreachRaised.AskedAgain(draft, line, verdict.Key[(verdict.Key.LastIndexOf('/') + 1)..], Reading(check, verdict, at)) : line;

    private static ManualValue? Known(Draft draft, string key)
    {
        var slash = key.LastIndexOf('/');
        if (draft.Index.Pool(key[..slash]) is not (>= 0 and var pool)) return null;
        foreach (var (measurand, value) in draft.Pools[pool].Manual)
            if (measurand.Key() == key[(slash + 1)..]) return value;
        return null;
    }
}
