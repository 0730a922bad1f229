using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.PlantFile.Editing;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>All circuits of this process, and the door in front of them.</summary>
internal sealed class PlantHost(IRecordStore store, Committer committer, Snapshots snapshots, TimeProvider clock, ILogger<PlantHost> log) : IDoor, IAsyncDisposable
{
    private static readonly TimeSpan IdleTick = TimeSpan.FromSeconds(5);

    private const int MostSessions = 20_000;

    private readonly SemaphoreSlim _loading = new(1, 1);
    private readonly ConcurrentDictionary<string, long> _ordinals = new(StringComparer.Ordinal);
    private FrozenDictionary<string, CircuitWorker> _workers = FrozenDictionary<string, CircuitWorker>.Empty;
    private FrozenDictionary<string, CircuitWorker> _byTopic = FrozenDictionary<string, CircuitWorker>.Empty;
    private volatile Task _changing = Task.CompletedTask;
    private ITimer? _ticker;
    private int _stopped;

    public event Action? TopicsChanged;

    /// <summary>Raised for every message that comes in at the door, before it is decoded.</summary>
    public event Action<IncomingMessage>? Arrived;

    /// <summary>Raised after each commit of any circuit.</summary>
    public event Action<CircuitWorker, StepResult>? Committed;

    public IReadOnlyCollection<string> Topics => _byTopic.Keys;

    public bool IsOwn(string topic) => (Plan?.Telling ?? TellingPlan.None).Channels.Any(c => c.Topic is { } own && (topic == own || topic.StartsWith(own + "/", StringComparison.Ordinal)));

    /// <summary>The plan in force; null before the first.</summary>
    public PlantPlan? Plan { get; private set; }

    /// <summary>The circuits of the plan, without the place for strays.</summary>
    /// <remarks>While a plant file comes into force, a circuit of the last one may be gone already.</remarks>
    public IEnumerable<CircuitWorker> Circuits
    {
        get
        {
            var known = _workers;
            return Plan is null ? [] : Plan.Circuits.Select(c => known.GetValueOrDefault(c.Id)).OfType<CircuitWorker>();
        }
    }

    /// <summary>Every partition that can hold refusals: the circuits and the place for strays.</summary>
    public IEnumerable<CircuitWorker> Everything => _workers.Values;

    public CircuitWorker? Find(string circuit) => _workers.GetValueOrDefault(circuit);

    /// <summary>Brings a plant file into force: restores new circuits, tells the old ones, retires the missing.</summary>
    public async Task LoadAsync(PlantPlan plan, CancellationToken cancellation, PlantPlan? before = null, PlanSigned? signed = null)
    {
        await _loading.WaitAsync(cancellation);
        before = Plan ?? before;
        var next = new Dictionary<string, CircuitWorker>(StringComparer.Ordinal);
        // Between two plans a message would find nobody who claims its topic: it waits at the door.
        var changed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _changing = changed.Task;
        try
        {
            await RefuseHiddenLatchesAsync(before, plan, cancellation);
            await FollowRenamesAsync(plan, cancellation);
            foreach (var circuit in plan.Circuits.Append(CircuitPlan.Nowhere))
                next[circuit.Id] = _workers.GetValueOrDefault(circuit.Id) ?? await OpenAsync(circuit, cancellation);
            // What goes from circuit to circuit is read before any of them lets go of it.
            var arrivals = await ArrivalsAsync(before, plan, next, cancellation);
            foreach (var circuit in plan.Circuits.Append(CircuitPlan.Nowhere))
                await TellAsync(next[circuit.Id], circuit, Moves(before, plan, circuit.Id), arrivals.GetValueOrDefault(circuit.Id, Arrival.Nothing), signed, cancellation);
            await RetireAsync(_workers.Values.Where(w => !next.ContainsKey(w.Partition.Value)), before, plan, signed, cancellation);

            _workers = next.ToFrozenDictionary(StringComparer.Ordinal);
            _byTopic = plan.Circuits.SelectMany(c => TopicsOf(c).Select(t => (Topic: t, Circuit: c.Id))).DistinctBy(x => x.Topic)
                .ToFrozenDictionary(x => x.Topic, x => _workers[x.Circuit], StringComparer.Ordinal);
            Plan = plan;
            _ticker ??= clock.CreateTimer(_ => Tick(), null, IdleTick, IdleTick);
            if (!plan.Circuits.IsEmpty || before is not null) LoopLog.PlanInForce(log, plan.Circuits.Length, plan.Circuits.Sum(c => c.Probes.Length));
        }
        catch
        {
            // Two loops over one partition would shut each other out: what was opened for nothing is closed, and opened again next time.
            foreach (var opened in next.Values.Where(w => !_workers.Values.Contains(w))) await opened.DisposeAsync();
            throw;
        }
        finally
        {
            changed.SetResult();
            _loading.Release();
        }

        TopicsChanged?.Invoke();
    }

    public async ValueTask<Task> MessageAsync(IncomingMessage message, CancellationToken cancellation)
    {
        await _changing.WaitAsync(cancellation);
        // A broker that hands us all there is hands us our own words too.
        if (IsOwn(message.Topic)) return Task.CompletedTask;
        Arrived?.Invoke(message);
        var worker = _byTopic.GetValueOrDefault(message.Topic) ?? _workers[CircuitPlan.Nowhere.Id];
        var packet = message.PacketId == 0 ? null : new PacketIdentity(message.Session, message.PacketId, NextOrdinal(message.Session), message.Redelivered);
        return await worker.SendAsync(at => new MessageArrived(at, message.Topic, message.Payload, message.Retained, packet), cancellation);
    }

    public async Task<Outcome> SendAsync(string circuit, Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        var worker = Find(circuit) ?? throw new OperationCanceledException($"circuit {circuit} is gone");
        return await await worker.SendAsync(make, cancellation);
    }

    /// <summary>Hands an event to a circuit as <see cref="SendAsync"/> does, when the circuit as it stands has no objection. What two may answer at once is asked of one after the other.</summary>
    public async Task<Outcome> AskAsync(string circuit, Func<CircuitState, Outcome.TurnedDown?> objection, Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        var worker = Find(circuit) ?? throw new OperationCanceledException($"circuit {circuit} is gone");
        return await worker.AskAsync(objection, make, cancellation);
    }

    public async Task SessionLostAsync(string session, Instant since, CancellationToken cancellation)
    {
        foreach (var worker in Circuits.ToArray())
            await await worker.SendAsync(at => new SessionLost(at, since, session), cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _stopped, 1) == 1) return;
        if (_ticker is not null) await _ticker.DisposeAsync();
        foreach (var worker in _workers.Values) await worker.DisposeAsync();
        _loading.Dispose();
    }

    internal static IEnumerable<string> TopicsOf(CircuitPlan circuit) =>
        circuit.Probes.Select(p => p.Topic).Concat(circuit.Pumps.Select(p => p.StateTopic)).Concat(circuit.Pumps.Select(p => p.TankTopic).OfType<string>())
            .Concat(circuit.Pumps.Select(p => p.StrokesTopic).OfType<string>()).Distinct();

    private static ImmutableArray<Reason> Moves(PlantPlan? before, PlantPlan next, string circuit) =>
        before is null ? [] : PlanChange.MovesOf(before, next, circuit);

    private async Task<Dictionary<string, Arrival>> ArrivalsAsync(PlantPlan? before, PlantPlan plan, Dictionary<string, CircuitWorker> next, CancellationToken cancellation)
    {
        if (before is null) return [];
        var states = new Dictionary<string, CircuitState>(StringComparer.Ordinal);
        foreach (var circuit in before.Circuits) states[circuit.Id] = await KnownAsync(circuit, plan, next, cancellation);
        return plan.Circuits.ToDictionary(c => c.Id, c => Arrival.In(before, plan, c.Id, id => states.GetValueOrDefault(id)), StringComparer.Ordinal);
    }

    // Before anything of it is done: a file that hides what a person must see to changes nothing.
    private async Task RefuseHiddenLatchesAsync(PlantPlan? before, PlantPlan plan, CancellationToken cancellation)
    {
        foreach (var gone in before?.Circuits.Where(c => !plan.Circuits.Any(next => next.Id == c.Id || next.Was == c.Id)) ?? [])
        {
            var state = _workers.GetValueOrDefault(gone.Id)?.State ?? (await Restore.FromAsync(store, new PartitionKey(gone.Id), gone, cancellation)).State;
            if (HeldLatches.Of(state) is { } why) throw new PlanRefusedException(why);
        }
    }

    // A circuit that left the plant file while the server stood still runs nowhere: what its pools leave behind is in the record.
    private async Task<CircuitState> KnownAsync(CircuitPlan circuit, PlantPlan plan, Dictionary<string, CircuitWorker> next, CancellationToken cancellation)
    {
        var renamed = plan.Circuits.FirstOrDefault(c => c.Was == circuit.Id && !plan.Circuits.Any(p => p.Id == circuit.Id))?.Id ?? circuit.Id;
        var worker = next.GetValueOrDefault(renamed) ?? _workers.GetValueOrDefault(circuit.Id);
        return worker?.State ?? (await Restore.FromAsync(store, new PartitionKey(circuit.Id), circuit, cancellation)).State;
    }

    private static async Task TellAsync(CircuitWorker worker, CircuitPlan plan, ImmutableArray<Reason> moves, Arrival arrival, PlanSigned? signed, CancellationToken cancellation)
    {
        if (await await worker.SendAsync(at => new PlanLoaded(at, plan) { Moves = moves, Arrival = arrival, By = signed?.By, Why = signed?.Why }, cancellation) is Outcome.TurnedDown)
            throw new InvalidOperationException($"circuit {plan.Id} did not take its plan");
    }

    // A renamed circuit is the same partition under another key: its history follows.
    private async Task FollowRenamesAsync(PlantPlan plan, CancellationToken cancellation)
    {
        foreach (var circuit in plan.Circuits)
        {
            if (circuit.Was is not { } was || _workers.ContainsKey(circuit.Id) || plan.Circuits.Any(c => c.Id == was)) continue;
            if (_workers.TryGetValue(was, out var old))
            {
                _workers = _workers.Where(w => w.Key != was).ToFrozenDictionary(StringComparer.Ordinal);
                _byTopic = _byTopic.Where(t => t.Value != old).ToFrozenDictionary(StringComparer.Ordinal);
                await old.DisposeAsync();
            }

            await store.RenamePartitionAsync(new PartitionKey(was), new PartitionKey(circuit.Id), cancellation);
        }
    }

    private async Task<CircuitWorker> OpenAsync(CircuitPlan circuit, CancellationToken cancellation)
    {
        var started = clock.GetTimestamp();
        var partition = new PartitionKey(circuit.Id);
        var restored = await Restore.FromAsync(store, partition, circuit, cancellation);
        LoopLog.Restored(log, circuit.Id, restored.Seq, restored.Replayed, clock.GetElapsedTime(started).TotalMilliseconds);
        RememberOrdinals(restored.State.Packets);
        var worker = new CircuitWorker(restored, committer, snapshots, clock, log);
        worker.Committed += (w, result) => Committed?.Invoke(w, result);
        worker.Start();
        return worker;
    }

    // A circuit that is gone from the plant file gets an empty plan as its last word: its alarms end, its history stays.
    private static async Task RetireAsync(IEnumerable<CircuitWorker> gone, PlantPlan? before, PlantPlan next, PlanSigned? signed, CancellationToken cancellation)
    {
        foreach (var worker in gone)
        {
            var bare = new CircuitPlan { Id = worker.Partition.Value, Name = worker.State.Plan.Name, TimeZone = worker.State.Plan.TimeZone };
            await TellAsync(worker, bare, Moves(before, next, bare.Id), Arrival.Nothing, signed, cancellation);
            await worker.DisposeAsync();
        }
    }

    private void RememberOrdinals(PacketMemory memory)
    {
        for (var i = 0; i < memory.Sessions.Length; i++)
        {
            var ordinal = memory.Ordinals[i];
            _ordinals.AddOrUpdate(memory.Sessions[i], ordinal, (_, known) => Math.Max(known, ordinal));
        }
    }

    private long NextOrdinal(string session)
    {
        // Devices under ever new names must not fill the memory. A count that starts anew only makes a packet sent again seem nearer than it is.
        if (_ordinals.Count > MostSessions) _ordinals.Clear();
        return _ordinals.AddOrUpdate(session, 1, static (_, known) => known + 1);
    }

    private void Tick()
    {
        foreach (var worker in _workers.Values) worker.TickWhenIdle();
    }
}
