using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.History;

/// <summary>One circuit of the record put through the fold again: readings in the order of their sample times, what people did when they did it, and a clock that ticks. The record is only read, an hour at a time.</summary>
/// <remarks>Causal: what came later changes nothing of what was said before. From a time on, a second side may be told the same under another plan, so that the history is read once for both.</remarks>
internal sealed class CircuitReplay
{
    // Ticks lie closer than the pause from which the fold says that nobody listened.
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(20);
    private const int BatchEvents = 1024;

    private readonly StoredFeed _feed;
    private readonly StoredWindows _windows;
    private readonly IReadOnlyList<RecordedAct> _acts;
    private readonly List<PlantEvent> _batch = new(BatchEvents);
    private readonly List<ReplaySide> _sides;
    private (Instant At, CircuitPlan Plan, Func<Action<StepResult>> Begin)? _fork;
    private Instant _last;
    private Instant _clock;
    private int _next;

    /// <param name="archive">The record.</param>
    /// <param name="partition">The circuit in it.</param>
    /// <param name="plan">The plan to replay under.</param>
    /// <param name="start">Where it begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="take">Hears what each step said.</param>
    /// <param name="fine">Whether it hears of each change of a standing with the state of that moment.</param>
    public CircuitReplay(SqliteArchive archive, PartitionKey partition, CircuitPlan plan, Instant start, Instant to, Action<StepResult> take, bool fine = false)
    {
        _feed = new StoredFeed(archive, partition, plan, to);
        _windows = new StoredWindows(archive, partition, _feed);
        _acts = RecordedActs.Of(archive, partition, start, to);
        _sides = [new ReplaySide(CircuitState.Of(_feed.Plan), take, fine)];
        (Start, To, _clock) = (start, to, start);
    }

    /// <summary>Start of the run-in.</summary>
    public Instant Start { get; }

    /// <summary>End.</summary>
    public Instant To { get; }

    /// <summary>Under the plan.</summary>
    public ReplaySide Side => _sides[0];

    /// <summary>Under the other plan; null before its time.</summary>
    public ReplaySide? Other => _sides.Count > 1 ? _sides[1] : null;

    /// <summary>From a time on the same is told to a second side, for which another plan comes into force then.</summary>
    /// <param name="at">When.</param>
    /// <param name="plan">The other plan, with the same probes and pumps.</param>
    /// <param name="begin">Called at that time; gives who hears what each step of the second side said.</param>
    public void ForkAt(Instant at, CircuitPlan plan, Func<Action<StepResult>> begin) => _fork = (at, StoredFeed.Speaking(plan), begin);

    /// <summary>Runs it all.</summary>
    /// <param name="reached">Hears of the time that was reached, between two batches.</param>
    /// <param name="cancellation">Ends it between two batches.</param>
    public void Run(Action<Instant> reached, CancellationToken cancellation)
    {
        _batch.Add(new PlanLoaded(Now(Start), _feed.Plan));
        foreach (var (at, topic, payload) in _feed.Between(Start, To))
        {
            Until(at, reached, cancellation);
            _batch.Add(new MessageArrived(Now(at), topic, payload, false, null));
            if (_batch.Count >= BatchEvents) Pause(at, reached, cancellation);
        }

        Until(To, reached, cancellation);
        Pause(To, reached, cancellation);
    }

    private void Until(Instant at, Action<Instant> reached, CancellationToken cancellation)
    {
        while (true)
        {
            var tick = _clock + Tick;
            var first = Instant.Earlier(at, tick);
            if (_fork is { } fork && fork.At <= first && (_next == _acts.Count || fork.At <= _acts[_next].At)) Fork(fork.At, fork.Plan, fork.Begin);
            else if (_next < _acts.Count && _acts[_next].At <= first) Do(_acts[_next++]);
            else if (tick <= at) _batch.Add(new ClockTicked(Now(_clock = tick)));
            else return;
            if (_batch.Count >= BatchEvents) Pause(_clock, reached, cancellation);
        }
    }

    private void Fork(Instant at, CircuitPlan plan, Func<Action<StepResult>> begin)
    {
        _fork = null;
        Flush();
        var other = Side.Fork(begin());
        _sides.Add(other);
        other.Fold([new PlanLoaded(Now(at), plan)]);
    }

    private void Do(RecordedAct act)
    {
        Flush();
        var now = Now(act.At);
        // What the record holds around a check is the same for both.
        ImmutableArray<ProbeWindow>? windows = null;
        foreach (var side in _sides) side.Do(act, now, check => windows ??= _windows.Of(side.State, check));
    }

    private void Pause(Instant at, Action<Instant> reached, CancellationToken cancellation)
    {
        Flush();
        reached(at);
        cancellation.ThrowIfCancellationRequested();
    }

    private void Flush()
    {
        if (_batch.Count == 0) return;
        foreach (var side in _sides) side.Fold(_batch);
        _batch.Clear();
    }

    // Receive times rise strictly within a circuit.
    private Instant Now(Instant at) => _last = Instant.Later(at, _last + TimeSpan.FromMicroseconds(1));
}
