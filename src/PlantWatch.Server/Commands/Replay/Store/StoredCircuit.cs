using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>One circuit of the record put through the fold again: readings in the order of their sample times, checks and calibrations when they were entered, and a clock that ticks.</summary>
internal sealed class StoredCircuit
{
    // Ticks lie closer than the pause from which the fold says that nobody listened.
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(20);
    private const int BatchEvents = 1024;

    private readonly SqliteArchive _archive;
    private readonly PartitionKey _partition;
    private readonly StoredFeed _feed;
    private readonly VerdictSheet _sheet;
    private readonly IReadOnlyList<(Instant At, EntryBody Body)> _happenings;
    private readonly List<PlantEvent> _batch = new(BatchEvents);
    private CircuitState _state;
    private Instant _last;
    private Instant _clock;
    private int _next;

    public StoredCircuit(SqliteArchive archive, PartitionKey partition, CircuitPlan plan, Instant start, Instant to)
    {
        (_archive, _partition) = (archive, partition);
        _feed = new StoredFeed(archive, partition, plan, to);
        _sheet = new VerdictSheet(plan.Probes.Select(p => p.Id).ToHashSet());
        _happenings = StoredHappenings.Of(archive, partition, start, to);
        _state = CircuitState.Of(_feed.Plan);
        (Start, To, _clock) = (start, to, start);
    }

    /// <summary>Start of the run-in.</summary>
    public Instant Start { get; }

    /// <summary>End.</summary>
    public Instant To { get; }

    /// <summary>What the fold said, in order.</summary>
    public List<RecordEntry> Entries { get; } = [];

    /// <summary>Rows of verdicts.csv and doubted.csv.</summary>
    public VerdictSheet Sheet => _sheet;

    /// <summary>Readings that went through.</summary>
    public long Readings { get; private set; }

    /// <summary>Readings that this plant file refuses.</summary>
    public long Refused { get; private set; }

    /// <summary>Checks and calibrations that this plant file turns down.</summary>
    public long TurnedDown { get; private set; }

    /// <summary>Checks and calibrations that were taken.</summary>
    public long Taken { get; private set; }

    /// <summary>Runs it all.</summary>
    /// <param name="reached">Hears of the time that was reached.</param>
    public void Run(Action<Instant> reached)
    {
        _batch.Add(new PlanLoaded(Now(Start), _feed.Plan));
        foreach (var (at, topic, payload) in _feed.Between(Start, To))
        {
            Until(at);
            _batch.Add(new MessageArrived(Now(at), topic, payload, false, null));
            if (_batch.Count < BatchEvents) continue;
            Flush();
            reached(at);
        }

        Until(To);
        Flush();
    }

    private void Until(Instant at)
    {
        while (true)
        {
            var tick = _clock + Tick;
            if (_next < _happenings.Count && _happenings[_next].At <= at && _happenings[_next].At <= tick) Do(_happenings[_next++]);
            else if (tick <= at) _batch.Add(new ClockTicked(Now(_clock = tick)));
            else return;
            if (_batch.Count >= BatchEvents) Flush();
        }
    }

    private void Do((Instant At, EntryBody Body) happening)
    {
        Flush();
        if (StoredHappenings.Event(happening.Body, Now(happening.At), Windows) is not { } done) return;
        _batch.Add(done);
        Flush();
    }

    // What was stored after the check had been entered was not known then.
    private ImmutableArray<ProbeWindow> Windows(ManualCheck check)
    {
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var (plan, state) in _state.Plan.Probes.Zip(_state.Probes))
        {
            if (plan.PoolId is not null && plan.PoolId != check.PoolId) continue;
            var (from, to) = Reconciliation.WindowAround(plan, check);
            var newest = state.Last.MeasuredAt;
            if (newest.IsSet && newest < to) from = Instant.Later(newest, check.SampledAt) - (to - from);
            var window = _archive.Window(_partition, _feed.SeriesOf(plan.Id), from, Instant.Earlier(to, newest + TimeSpan.FromMicroseconds(1)));
            windows.Add(window with { Series = plan.Id, To = to });
        }

        return windows.DrainToImmutable();
    }

    private void Flush()
    {
        if (_batch.Count == 0) return;
        _state = FineSteps.Run(_state, _batch, Take);
        _batch.Clear();
    }

    private void Take(StepResult result)
    {
        Readings += result.Readings.Length;
        Refused += result.Refusals.Length;
        if (_batch is [CheckEntered or CalibrationProposed or CalibrationDecided])
        {
            if (result.Outcomes[0] is Outcome.TurnedDown) TurnedDown++;
            else Taken++;
        }

        Entries.AddRange(result.Entries);
        _sheet.Take(result.Entries, result.Next);
    }

    // Receive times rise strictly within a circuit.
    private Instant Now(Instant at) => _last = Instant.Later(at, _last + TimeSpan.FromMicroseconds(1));
}
