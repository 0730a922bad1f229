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
            alarm = new AlarmRecord { Key = key, Rule = rule.Number, Subject = subject, Priority = rule.Priority, Cause = cause() };
        }

        var (next, change) = AlarmLife.Look(alarm, rule, holds, at);
        if (change == AlarmChange.Raised) next = next with { Id = draft.NewId(at), Cause = cause() };
        else if (holds && alarm.Active) (next, change) = Again(next, at, cause(), renew);
        Keep(alarm, next, change, at, null, null);
    }

    // From too low to too high without having been well in between: whoever has seen the one has not seen the other.
    private (AlarmRecord Next, AlarmChange Change) Again(AlarmRecord alarm, Instant at, Reason cause, bool renew) =>
        cause.Code != alarm.Cause.Code ? (AlarmLife.Anew(alarm, at) with { Id = draft.NewId(at), Cause = cause }, AlarmChange.Raised)
        : renew && cause != alarm.Cause ? (alarm with { Cause = cause }, AlarmChange.None)
        : (alarm, AlarmChange.None);

    /// <summary>Time went on to the watermark.</summary>
    public void Wait(Instant watermark)
    {
        if (Count == 0) return;
        foreach (var alarm in Live())
        {
            if (!alarm.PendingSince.IsSet && !alarm.ShelvedUntil.IsSet && !AlarmLife.IsOver(alarm)) continue;
            var (next, change) = AlarmLife.Wait(alarm, RuleBook.All[alarm.Rule], watermark);
            if (change == AlarmChange.Raised) next = next with { Id = draft.NewId(watermark) };
            Keep(alarm, next, change, watermark, null, null);
        }
    }

    /// <summary>Design suppresses, or releases, the alarms of a subject that need sample flow.</summary>
    public void Suppress(string subject, bool suppressed, Instant at)
    {
        foreach (var alarm in Live())
        {
            if (alarm.Subject != subject || alarm.Suppressed == suppressed) continue;
            if (!RuleBook.All[alarm.Rule].NeedsFlow) continue;
            // What was pending rests on water that no longer passes the cell: it starts anew with the flow.
            var next = alarm with { Suppressed = suppressed, PendingSince = Instant.Never };
            if (alarm.State == AlarmState.Normal) Changing().Remove(alarm.Key);
            else Keep(alarm, next, suppressed ? AlarmChange.Suppressed : AlarmChange.Released, at, null, null);
        }
    }

    /// <summary>Takes over alarms that were carried to another plan: a renamed subject keeps its alarm with acknowledgement and shelf, one that is gone ends.</summary>
    public void Adopt(ImmutableSortedDictionary<string, AlarmRecord> carried, Instant at)
    {
        var kept = carried.Values.Select(a => a.Id).Where(id => id != Guid.Empty).ToHashSet();
        foreach (var alarm in Live())
            if (alarm.Id != Guid.Empty && !kept.Contains(alarm.Id) && alarm is not { Active: false, IsAcknowledged: true })
                Write(at, new AlarmEntry(alarm with { Active = false, ClearedAt = at }, AlarmChange.Retired, null, null));
        var alarms = Changing();
        alarms.Clear();
        alarms.AddRange(carried);
    }

    /// <summary>What it watched is gone.</summary>
    public void Retire(string key, Instant at)
    {
        if (Find(key) is not { } alarm) return;
        Changing().Remove(key);
        if (alarm is { Active: false, IsAcknowledged: true }) return;
        Write(at, new AlarmEntry(alarm with { Active = false, ClearedAt = at }, AlarmChange.Retired, null, null));
    }

    public Outcome Acknowledge(AlarmAcknowledged said) => Act(said.AlarmId, alarm =>
        alarm.IsAcknowledged
            ? Outcome.AlreadyDone.Instance
            : Keep(alarm, AlarmLife.Acknowledge(alarm, said.At, said.By, said.Comment), AlarmChange.Acknowledged, said.At, said.By, said.Comment));

    public Outcome Shelve(AlarmShelved said) => Act(said.AlarmId, alarm =>
    {
        if (!RuleBook.All[alarm.Rule].Shelvable)
            return Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "", Reason.Of("alarm.never_shelved", alarm.Rule));
        if (said.Until <= said.At || said.Until - said.At > AlarmLife.LongestShelf)
            return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "minutes", Reason.Of("alarm.shelf_too_long", AlarmLife.LongestShelf.TotalHours));
        return Keep(alarm, AlarmLife.Shelve(alarm, said.Until, said.By), AlarmChange.Shelved, said.At, said.By, said.Why);
    });

    public Outcome Unshelve(AlarmUnshelved said) => Act(said.AlarmId, alarm =>
        alarm.ShelvedUntil.IsSet
            ? Keep(alarm, AlarmLife.OffShelf(alarm), AlarmChange.Unshelved, said.At, said.By, null)
            : Outcome.AlreadyDone.Instance);

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
        if (change != AlarmChange.None) Write(at, new AlarmEntry(next, change, by, comment));
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
