using System.Collections.Immutable;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.History;

/// <summary>A circuit as it comes out of its history under one plan. It is told what happened and keeps nothing but its state and some counts.</summary>
/// <param name="state">Where it begins.</param>
/// <param name="take">Hears what each step said.</param>
/// <param name="fine">Each step in which a standing changes is heard event by event, with the state of that moment.</param>
internal sealed class ReplaySide(CircuitState state, Action<StepResult> take, bool fine = false)
{
    private StepResult? _last;

    /// <summary>As it stands now.</summary>
    public CircuitState State { get; private set; } = state;

    /// <summary>Readings that went through.</summary>
    public long Readings { get; private set; }

    /// <summary>Readings that this plan refuses.</summary>
    public long Refused { get; private set; }

    /// <summary>Checks and calibrations that were taken.</summary>
    public long Taken { get; private set; }

    /// <summary>Checks and calibrations that this plan turns down.</summary>
    public long TurnedDown { get; private set; }

    /// <summary>What people did with alarms that do not stand here.</summary>
    public long WithoutAlarm { get; private set; }

    /// <summary>Pools that were opened and would not have passed the gate here: the times, and which.</summary>
    public List<(Instant At, string Pool)> NotPassed { get; } = [];

    /// <summary>Folds a batch.</summary>
    public void Fold(IReadOnlyList<PlantEvent> batch)
    {
        if (fine) State = FineSteps.Run(State, batch, Heard);
        else
        {
            Heard(Step.Run(State, batch));
            State = _last!.Next;
        }
    }

    /// <summary>An act of a person.</summary>
    public void Do(RecordedAct act, Instant now, Func<ManualCheck, ImmutableArray<ProbeWindow>> windows)
    {
        if (ActEvents.Of(act, now, State, windows) is not { } done)
        {
            if (act.Row.Body is AlarmEntry) WithoutAlarm++;
            return;
        }

        Fold([done]);
        var no = _last!.Outcomes[0] is Outcome.TurnedDown;
        if (act.Row.Body is CheckEntry or CalibrationEntry) _ = no ? TurnedDown++ : Taken++;
        else if (act.Row.Body is AlarmEntry && no) WithoutAlarm++;
        else if (act.Row.Body is PoolStateEntry said && no) Become(act, said);
    }

    /// <summary>The same history from here on under another plan.</summary>
    public ReplaySide Fork(Action<StepResult> hear) => new(State, hear, fine);

    // The pool was opened, whatever the gate would say of it now: people were in the water.
    private void Become(RecordedAct act, PoolStateEntry said)
    {
        if (State.Pools.FirstOrDefault(p => p.Id == act.Row.Subject) is not { } pool) return;
        State = State with { Pools = State.Pools.Replace(pool, pool with { Operation = said.Operation }) };
        if (act.At == act.Row.At) NotPassed.Add((act.At, act.Row.Subject));
    }

    private void Heard(StepResult result)
    {
        _last = result;
        Readings += result.Readings.Length;
        Refused += result.Refusals.Length;
        take(result);
    }
}

/// <summary>Reads what the probes did around a check as far as it was known when it was entered.</summary>
internal sealed class StoredWindows(SqliteArchive archive, PartitionKey partition, StoredFeed feed)
{
    // What was stored after the check had been entered was not known then.
    public ImmutableArray<ProbeWindow> Of(CircuitState state, ManualCheck check)
    {
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var (plan, probe) in state.Plan.Probes.Zip(state.Probes))
        {
            if (plan.PoolId is not null && plan.PoolId != check.PoolId) continue;
            var (from, to) = Reconciliation.WindowAround(plan, check);
            var newest = probe.Last.MeasuredAt;
            if (newest.IsSet && newest < to) from = Instant.Later(newest, check.SampledAt) - (to - from);
            var window = archive.Window(partition, feed.SeriesOf(plan.Id), from, Instant.Earlier(to, newest + TimeSpan.FromMicroseconds(1)));
            windows.Add(window with { Series = plan.Id, To = to });
        }

        return windows.DrainToImmutable();
    }
}
