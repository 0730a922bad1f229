using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What alarms tell the exceptions: a probe that reads outside, or is back; a person who has seen it; a limit that is gone.</summary>
internal static class BreachByAlarm
{
    public static void Hear(Draft draft, AlarmEntry entry, Instant at)
    {
        if (BreachKeys.Of(draft, entry.Alarm) is not { } key) return;
        if (entry.Change == AlarmChange.Acknowledged) Seen(draft, key, entry, at);
        else if (BreachRules.GradeOf(entry.Alarm.Rule) is BreachGrade.Unknown or BreachGrade.Laboratory) return;
        else if (entry.Change == AlarmChange.Retired) Retired(draft, key, BreachRules.GradeOf(entry.Alarm.Rule), at);
        else if (!BreachRules.IsLiveLimit(entry.Alarm.Rule) && !BreachRules.IsLiveStop(entry.Alarm.Rule)) return;
        else if (entry.Change == AlarmChange.Raised && Counts(draft, entry.Alarm)) Raised(draft, key, entry.Alarm, at);
        else if (entry.Change == AlarmChange.Cleared) Back(draft, key, entry.Alarm, at);
    }

    // Doubt never makes safe: an extreme counts whatever the probe's standing. A comfort limit that a doubted probe reads is the probe's quarrel, and its own rule asks for the test.
    private static bool Counts(Draft draft, AlarmRecord alarm) =>
        BreachRules.IsLiveStop(alarm.Rule) || draft.Probes[draft.Index.Probe(alarm.Subject)] is { Trust.Standing: Standing.Good, Signal.Standing: Standing.Good };

    private static void Raised(Draft draft, string key, AlarmRecord alarm, Instant at)
    {
        var (grade, reading) = (BreachRules.GradeOf(alarm.Rule), new BreachReading(BreachSource.Probe, alarm.Id, alarm.Rule, alarm.RaisedAt, at, alarm.Cause, null));
        if (draft.Exceptions.Find(key) is not { } line) BreachActs.LookBack(draft, draft.Exceptions.Begin(key, grade, reading, at), at);
        else if (grade > line.Grade)
            draft.Exceptions.Keep(
                BreachRaised.AskedAgain(draft, line.With(new(StepKind.Reading, alarm.Id, alarm.RaisedAt, at, null) { Grade = grade, What = alarm.Cause }), line.Quantity, reading).AtLeast(grade), ExceptionChange.Retested, at);
    }

    // A value that swings about its limit is back as often: it is told once, of the newest time.
    private static void Back(Draft draft, string key, AlarmRecord alarm, Instant at)
    {
        if (draft.Exceptions.Find(key) is not { } line || BreachKeys.Stands(draft, key, static a => BreachRules.IsLiveLimit(a.Rule) || BreachRules.IsLiveStop(a.Rule))) return;
        var steps = line.Steps is [.., { Kind: StepKind.BackInside }] ? line.Steps.RemoveAt(line.Steps.Length - 1) : line.Steps;
        BreachByTest.KeepOrClose(draft, (line with { Steps = steps }).With(new(StepKind.BackInside, alarm.Id, alarm.ClearedAt, at, null)), ExceptionChange.Acted, at, alarm.ClearedAt);
    }

    private static void Seen(Draft draft, string key, AlarmEntry entry, Instant at)
    {
        if (draft.Exceptions.Find(key) is not { } line) return;
        var kind = string.IsNullOrWhiteSpace(entry.Comment) ? StepKind.Seen : StepKind.Words;
        draft.Exceptions.Keep(line.With(new(kind, entry.Alarm.Id, at, at, entry.By) { Text = kind == StepKind.Words ? entry.Comment : null }), ExceptionChange.Acted, at);
    }

    // A limit that is gone takes no graver breach with it: a stop owes its retest still. Of a pool that is gone another word is said, once the plan is in force.
    private static void Retired(Draft draft, string key, BreachGrade gone, Instant at)
    {
        if (BreachKeys.IsHere(draft, key) && draft.Exceptions.Find(key) is { } line && line.Grade <= gone && !BreachKeys.Stands(draft, key, static _ => true)) draft.Exceptions.Close(line, Closing.LimitGone, at, null);
    }
}
