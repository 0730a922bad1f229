using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The alarms of a circuit while a batch is folded.</summary>
internal sealed class AlarmDesk(ImmutableSortedDictionary<string, AlarmRecord> before, Draft draft)
{
    // Every reading asks for several keys and nearly always for one that is not there: a short list is faster than a tree.
    private const int ShortList = 16;

    private ImmutableSortedDictionary<string, AlarmRecord>.Builder? _changed;
    private AlarmRecord[]? _live;
    private bool _moved;

    public ImmutableSortedDictionary<string, AlarmRecord> Result => _changed?.ToImmutable() ?? before;

    /// <summary>The alarms in the order of their keys, as they stand now; what changes later leaves this list as it is.</summary>
    public IReadOnlyList<AlarmRecord> All => Live();

    private int Count => _changed?.Count ?? before.Count;

    public bool IsActive(string key) => Find(key) is { Active: true };

    public bool Knows(string key) => Find(key) is not null;

    public AlarmRecord? Find(string key)
    {
        if (Count == 0) return null;
        if (Count > ShortList) return (_changed is { } changed ? changed.TryGetValue(key, out var found) : before.TryGetValue(key, out found)) ? found : null;
        foreach (var alarm in Live())
            if (alarm.Key == key) return alarm;
        return null;
    }

    /// <summary>The condition of a rule was looked at for a subject. The cause is asked for only when it is needed.</summary>
    /// <param name="renew">The newest evidence is what the alarm is about from now on, as with a test by hand.</param>
    public void Look(Rule rule, string key, string subject, bool holds, Instant at, Func<Reason> cause, bool renew = false)
    {
        var alarm = Find(key);
        if (alarm is null)
        {
            if (!holds) return;
            alarm = Normal(rule, key, subject, cause());
        }

        var (next, change) = AlarmLife.Look(alarm, rule, holds, at);
        if (change == AlarmChange.Raised) next = Occurring(next with { Cause = cause() }, at);
        else if (holds && alarm.Active) (next, change) = Again(next, at, cause(), renew);
        Keep(alarm, next, change, at, null, null);
    }

    private AlarmRecord Normal(Rule rule, string key, string subject, Reason cause)
    {
        var alarm = new AlarmRecord { Key = key, Rule = rule.Number, Subject = subject, Priority = rule.Priority, Cause = cause, Latches = rule.Latches };
        return Suppression.CauseOf(rule, AroundFold.Of(draft, subject)) is { } by ? AlarmLife.Suppress(alarm, by) : alarm;
    }

    // Ids are counted within the circuit, so that the count tells which occurrence came first.
    private AlarmRecord Occurring(AlarmRecord alarm, Instant at)
    {
        var next = alarm with { Id = draft.NewId(at), Order = draft.Serial };
        return next with { ConsequenceOf = Consequences.RootOf(next, Live(), draft.Plan) };
    }

    // From too low to too high without having been well in between: whoever has seen the one has not seen the other.
    private (AlarmRecord Next, AlarmChange Change) Again(AlarmRecord alarm, Instant at, Reason cause, bool renew) =>
        cause.Code != alarm.Cause.Code ? (Occurring(AlarmLife.Anew(alarm, at) with { Cause = cause }, at), AlarmChange.Raised)
        : renew && cause != alarm.Cause ? (alarm with { Cause = cause }, AlarmChange.None)
        : (alarm, AlarmChange.None);

    /// <summary>Time went on to the watermark.</summary>
    public void Wait(Instant watermark)
    {
        if (Count == 0) return;
        Regard(watermark);
        foreach (var alarm in Live())
        {
            var (next, change) = AlarmLife.Wait(alarm, draft.Index.RuleOf(alarm.Rule, alarm.Subject), watermark);
            // What its cause has said need not be said again.
            if (change == AlarmChange.ReAlarmed && Annunciation.IsSpokenFor(alarm, Find)) continue;
            if (change == AlarmChange.Raised) next = Occurring(next, watermark);
            Keep(alarm, next, change, watermark, null, null);
        }
    }

    /// <summary>Looks at what design suppresses, and releases, now.</summary>
    public void Regard(Instant at)
    {
        if (Count == 0) return;
        foreach (var alarm in Live())
        {
            var by = Suppression.CauseOf(RuleBook.All[alarm.Rule], AroundFold.Of(draft, alarm.Subject));
            if (by is null && !alarm.Suppressed) continue;
            var next = by is not null ? AlarmLife.Suppress(alarm, by) : AlarmLife.Release(alarm, at);
            if (next == alarm) continue;
            // What nobody was shown is not told of.
            var isTold = next.Suppressed != alarm.Suppressed && !AlarmLife.IsOver(alarm with { PendingSince = Instant.Never });
            Keep(alarm, next, !isTold ? AlarmChange.None : next.Suppressed ? AlarmChange.Suppressed : AlarmChange.Released, at, null, null);
        }
    }

    /// <summary>Groups anew what follows from what, when anything moved.</summary>
    public void Group()
    {
        if (!_moved) return;
        _moved = false;
        foreach (var alarm in Live())
        {
            var root = Consequences.RootOf(alarm, Live(), draft.Plan);
            if (root != alarm.ConsequenceOf) Changing()[alarm.Key] = alarm with { ConsequenceOf = root };
        }
    }

    /// <summary>Takes over alarms that were carried to another plan: a renamed subject keeps its alarm with acknowledgement and shelf, one that is gone ends, unless its latch holds.</summary>
    public void Adopt(ImmutableSortedDictionary<string, AlarmRecord> carried, Instant at)
    {
        var kept = carried.Values.Select(a => a.Id).Where(id => id != Guid.Empty).ToHashSet();
        AlarmRecord[] lost = [.. Live().Where(a => a.Id != Guid.Empty && !kept.Contains(a.Id))];
        foreach (var alarm in lost) WriteRetired(alarm, at);
        var alarms = Changing();
        alarms.Clear();
        alarms.AddRange(carried);
        foreach (var alarm in lost)
            if (alarm.LatchHeld) PlanChange.Add(alarms, AlarmLife.Bereave(alarm, at));
        _moved = true;
    }

    /// <summary>What it watched is gone. A latch outlives it: a line in a file makes neither a tank nor a pipe safe.</summary>
    public void Retire(string key, Instant at)
    {
        if (Find(key) is not { } alarm) return;
        var left = alarm.LatchHeld ? AlarmLife.Bereave(alarm, at) : null;
        if (left == alarm) return;
        if (left is null) Changing().Remove(key);
        else Changing()[key] = left;
        _moved = true;
        WriteRetired(alarm, at);
    }

    private void WriteRetired(AlarmRecord alarm, Instant at)
    {
        if (alarm.State != AlarmState.Normal) Write(at, new AlarmEntry(alarm with { Active = false, ClearedAt = at }, AlarmChange.Retired, null, null));
    }

    public Outcome Acknowledge(AlarmAcknowledged said) => Act(said.AlarmId, alarm =>
        alarm.IsAcknowledged
            ? Outcome.AlreadyDone.Instance
            : Keep(alarm, AlarmLife.Acknowledge(alarm, said.At, said.By, said.Comment), AlarmChange.Acknowledged, said.At, said.By, said.Comment));

    public Outcome Shelve(AlarmShelved said) => Act(said.AlarmId, alarm =>
        AlarmRequests.ToShelve(RuleBook.All[alarm.Rule], said.At, said.Until, said.Why) is { } no
            ? No(no)
            : Keep(alarm, AlarmLife.Shelve(alarm, said.Until, said.By, said.Why, said.OneShot), AlarmChange.Shelved, said.At, said.By, said.Why));

    public Outcome Unshelve(AlarmUnshelved said) => Act(said.AlarmId, alarm =>
        alarm.ShelvedUntil.IsSet
            ? Keep(alarm, AlarmLife.OffShelf(alarm, said.At), AlarmChange.Unshelved, said.At, said.By, null)
            : Outcome.AlreadyDone.Instance);

    public Outcome Reset(AlarmReset said) => Act(said.AlarmId, alarm =>
        AlarmRequests.ToReset(alarm) is { } no ? No(no) : Keep(alarm, AlarmLife.Reset(alarm), AlarmChange.Reset, said.At, said.By, said.Comment));

    /// <summary>Water and pipes are common: what makes one of them safe makes all of them safe. A tank stands for itself.</summary>
    public Outcome MakeSafe(PlantMadeSafe said) => Act(said.AlarmId, alarm =>
    {
        if (AlarmRequests.ToMakeSafe(alarm, said.Acts) is { } no) return No(no);
        if (string.IsNullOrWhiteSpace(said.By)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        var ofOne = RuleBook.All[alarm.Rule].OfOneTank;
        AlarmRecord[] open = [.. Live().Where(a => a.MadeSafe is null && a.LatchHeld && RuleBook.All[a.Rule] is { MustBeMadeSafe: true } rule && (ofOne ? a.Key == alarm.Key : !rule.OfOneTank))];
        foreach (var one in open) Keep(one, AlarmLife.MakeSafe(one, said.At, said.By, said.Comment), AlarmChange.MadeSafe, said.At, said.By, said.Comment);
        return open.Length == 0 ? Outcome.AlreadyDone.Instance : Outcome.Done.Instance;
    });

    /// <summary>By its key, for what is to be taken out need not be in alarm.</summary>
    public Outcome TakeOut(AlarmTakenOutOfService said)
    {
        if (!TryWatched(said.Key, out var rule, out var subject)) return NotHere();
        if (AlarmRequests.ToTakeOut(rule, draft.Plan.People, said.At, said.Until, said.By, said.Why) is { } no) return No(no);
        var alarm = Find(said.Key) ?? Normal(rule, said.Key, subject, Reason.Of("alarm.out_of_service", subject));
        if (alarm.OutOfService) return Outcome.AlreadyDone.Instance;
        if (alarm.Id == Guid.Empty) alarm = alarm with { Id = draft.NewId(said.At) };
        return Keep(alarm, AlarmLife.TakeOut(alarm, said.At, said.Until, said.By, said.Why), AlarmChange.TakenOutOfService, said.At, said.By, said.Why);
    }

    public Outcome Return(AlarmReturnedToService said)
    {
        if (Find(said.Key) is not { OutOfService: true } alarm) return TryWatched(said.Key, out _, out _) ? Outcome.AlreadyDone.Instance : NotHere();
        return AlarmRequests.ToReturn(draft.Plan.People, said.By) is { } no
            ? No(no)
            : Keep(alarm, AlarmLife.Return(alarm, said.At), AlarmChange.ReturnedToService, said.At, said.By, said.Why);
    }

    private bool TryWatched(string key, out Rule rule, out string subject)
    {
        var slash = key.IndexOf('/', StringComparison.Ordinal);
        (rule, subject) = (RuleBook.IncidentOpen, slash < 0 ? "" : key[(slash + 1)..]);
        if (slash < 0 || !RuleBook.All.TryGetValue(key[..slash], out var known)) return false;
        rule = known;
        return AroundFold.IsHere(draft, subject) && Watched.Is(draft.Plan, rule.Number, subject);
    }

    private static Outcome.TurnedDown No(Objection no) => Outcome.TurnedDown.Because(no.IsOfState ? TurnedDownKind.Conflict : TurnedDownKind.Invalid, no.Field, no.Why);

    private static Outcome.TurnedDown NotHere() => Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "key", Reason.Of("alarm.not_watched"));

    private Outcome Act(Guid id, Func<AlarmRecord, Outcome> act)
    {
        var alarm = Live().FirstOrDefault(a => a.Id == id && id != Guid.Empty);
        // One that is normal and only pending is nothing that anybody was shown.
        return alarm is null or { State: AlarmState.Normal } ? Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "id", Reason.Of("alarm.not_live")) : act(alarm);
    }

    private Outcome.Done Keep(AlarmRecord old, AlarmRecord next, AlarmChange change, Instant at, string? by, string? comment)
    {
        if (AlarmLife.IsOver(next))
        {
            if (Knows(next.Key)) Changing().Remove(next.Key);
        }
        else if (!ReferenceEquals(old, next) || !Knows(next.Key)) Changing()[next.Key] = next;
        if (change == AlarmChange.None) return Outcome.Done.Instance;
        _moved = true;
        Write(at, new AlarmEntry(next, change, by, comment));
        if (change == AlarmChange.Cleared && old.OneShot) Write(at, new AlarmEntry(next, AlarmChange.Unshelved, null, null));
        return Outcome.Done.Instance;
    }

    private void Write(Instant at, AlarmEntry entry) => draft.Write(at, at, entry.Alarm.Subject, entry);

    private AlarmRecord[] Live() => _live ??= Count == 0 ? [] : [.. _changed?.Values ?? before.Values];

    // What is made for readers no longer holds after this.
    private ImmutableSortedDictionary<string, AlarmRecord>.Builder Changing()
    {
        _live = null;
        return _changed ??= before.ToBuilder();
    }
}
