using System.Text;
using System.Threading.Channels;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>One circuit's loop: take what arrived, fold it, commit it, answer it, tell it. In this order, always.</summary>
internal sealed class CircuitWorker : IAsyncDisposable
{
    private const int InboxCapacity = 8192;
    private const int LargestBatch = 4096;
    // A pack of 64 KiB can become thousands of refusals: what is folded at once is bounded by its bytes too.
    private const long MostBatchBytes = 4 << 20;
    private static readonly TimeSpan TickWhenBusy = TimeSpan.FromSeconds(1);

    private readonly Channel<Waiting> _inbox = Channel.CreateBounded<Waiting>(new BoundedChannelOptions(InboxCapacity) { SingleReader = true });
    private readonly Lock _stamping = new();
    private readonly SemaphoreSlim _asking = new(1, 1);
    private readonly Committer _committer;
    private readonly Snapshots _snapshots;
    private readonly TimeProvider _clock;
    private readonly ILogger _log;
    private readonly CancellationTokenSource _stopping = new();
    private Task _running = Task.CompletedTask;
    private Instant _lastStamp;
    private Instant _lastTick;
    private long _seq;
    private int _inFlight;

    public CircuitWorker(RestoredCircuit restored, Committer committer, Snapshots snapshots, TimeProvider clock, ILogger log)
    {
        (Partition, State, _seq, BackFills) = (restored.Partition, restored.State, restored.Seq, restored.BackFills);
        _lastStamp = restored.LastReceived;
        (_committer, _snapshots, _clock, _log) = (committer, snapshots, clock, log);
    }

    /// <summary>Raised after each commit, on the loop's own thread: quick handlers only.</summary>
    public event Action<CircuitWorker, StepResult>? Committed;

    public PartitionKey Partition { get; }

    /// <summary>The last committed state.</summary>
    public CircuitState State { get; private set; }

    /// <summary>Sequence number of the last commit.</summary>
    public long Seq => Interlocked.Read(ref _seq);

    /// <summary>What back-fills turned out to be.</summary>
    public BackFillTally BackFills { get; private set; }

    /// <summary>Messages that arrived and are not committed yet.</summary>
    public int InFlight => Volatile.Read(ref _inFlight);

    /// <summary>Events of any kind that wait in the inbox.</summary>
    public int Depth => _inbox.Reader.Count;

    public void Start() => _running = Task.Run(() => RunAsync(_stopping.Token));

    /// <summary>Waits for a place in the inbox. The task given back ends when the event is committed.</summary>
    public async ValueTask<Task<Outcome>> SendAsync(Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        var answer = new TaskCompletionSource<Outcome>(TaskCreationOptions.RunContinuationsAsynchronously);
        while (!TryEnqueue(make, answer))
            if (!await _inbox.Writer.WaitToWriteAsync(cancellation)) throw new OperationCanceledException("the circuit has stopped");
        return answer.Task;
    }

    /// <summary>Asks the circuit as it stands, and sends when nothing speaks against it. One at a time: of two at once the second is asked when the first is committed.</summary>
    public async Task<Outcome> AskAsync(Func<CircuitState, Outcome.TurnedDown?> objection, Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        await _asking.WaitAsync(cancellation);
        try
        {
            return objection(State) ?? await await SendAsync(make, cancellation);
        }
        finally
        {
            _asking.Release();
        }
    }

    /// <summary>A tick when nothing else moves time on.</summary>
    public void TickWhenIdle()
    {
        if (_inbox.Reader.Count == 0) TryEnqueue(at => new ClockTicked(at), new TaskCompletionSource<Outcome>());
    }

    public async ValueTask DisposeAsync()
    {
        _inbox.Writer.TryComplete();
        await _stopping.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        while (_inbox.Reader.TryRead(out var left)) Drop(left);
        await _snapshots.SaveAsync(Partition, Seq, State);
        _stopping.Dispose();
    }

    // Receive times rise strictly within a circuit: that is what makes two equal values in a row two readings.
    private bool TryEnqueue(Func<Instant, PlantEvent> make, TaskCompletionSource<Outcome> answer)
    {
        lock (_stamping)
        {
            var at = Instant.Later(Instant.From(_clock.GetUtcNow()), _lastStamp + TimeSpan.FromMicroseconds(1));
            var waiting = new Waiting(make(at), answer);
            // Counted before it can be read, so that the count never falls below nothing.
            if (waiting.IsMessage) Interlocked.Increment(ref _inFlight);
            if (_inbox.Writer.TryWrite(waiting))
            {
                _lastStamp = at;
                return true;
            }

            if (waiting.IsMessage) Interlocked.Decrement(ref _inFlight);
            return false;
        }
    }

    private void Answer(in Waiting waiting, Outcome outcome)
    {
        if (waiting.IsMessage) Interlocked.Decrement(ref _inFlight);
        waiting.Answer.TrySetResult(outcome);
    }

    // Whoever still waits was not committed: it is told so, and sends again.
    private void Drop(in Waiting waiting)
    {
        if (waiting.Answer.TrySetCanceled(CancellationToken.None) && waiting.IsMessage) Interlocked.Decrement(ref _inFlight);
    }

    private async Task RunAsync(CancellationToken cancellation)
    {
        var taken = new List<Waiting>();
        while (await _inbox.Reader.WaitToReadAsync(cancellation))
        {
            taken.Clear();
            var bytes = 0L;
            // A batch ends with a new plan: what follows may speak of series under their new names.
            while (taken.Count < LargestBatch && bytes < MostBatchBytes && (taken.Count == 0 || taken[^1].Event is not PlanLoaded) && _inbox.Reader.TryRead(out var waiting))
            {
                taken.Add(waiting);
                bytes += (waiting.Event as MessageArrived)?.Payload.Length ?? 0;
            }

            try
            {
                await OneBatchAsync(taken, cancellation);
            }
            catch (Exception fault) when (IsDefect(fault))
            {
                // Not even setting it aside succeeded. A circuit that stopped here would stand still until somebody restarts the server.
                LoopLog.BatchLost(_log, Partition.Value, taken.Count, fault);
            }
            finally
            {
                foreach (var waiting in taken) Drop(waiting);
            }
        }
    }

    private async Task OneBatchAsync(List<Waiting> taken, CancellationToken cancellation)
    {
        var events = new List<PlantEvent>(taken.Count + 1);
        foreach (var waiting in taken) events.Add(waiting.Event);
        var newest = events[^1].At;
        if (newest - _lastTick >= TickWhenBusy && events[^1] is not ClockTicked) events.Add(new ClockTicked(newest));
        if (events[^1] is ClockTicked) _lastTick = newest;

        StepResult result;
        try
        {
            result = Step.Run(State, events);
            await CommitAsync(events, result, cancellation);
        }
        catch (Exception fault) when (IsDefect(fault))
        {
            await OneByOneAsync(taken, fault, cancellation);
            return;
        }

        for (var i = 0; i < taken.Count; i++) Answer(taken[i], result.Outcomes[i]);
        Tell(result);
    }

    private async Task CommitAsync(List<PlantEvent> events, StepResult result, CancellationToken cancellation)
    {
        var commit = new Commit(Partition, Seq + 1, events.Count > 0 ? events[^1].At : _lastStamp, JournalCodec.Write(events), result);
        var receipt = await _committer.CommitAsync(commit, cancellation);
        State = result.Next;
        Interlocked.Exchange(ref _seq, commit.Seq);
        BackFills = new(BackFills.AlreadyThere + receipt.BackFills.AlreadyThere, BackFills.Conflicting + receipt.BackFills.Conflicting);
    }

    private void Tell(StepResult result)
    {
        _snapshots.Consider(Partition, Seq, State);
        try
        {
            Committed?.Invoke(this, result);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            LoopLog.ListenerFailed(_log, Partition.Value, fault);
        }
    }

    private static bool IsDefect(Exception fault) => fault is not (OutOfMemoryException or OperationCanceledException or OutOfSequenceException);

    // An event on which the fold itself fails is a defect of ours. It must not stop the circuit: it is set aside with its bytes,
    // and everything else of the batch goes on alone.
    private async Task OneByOneAsync(List<Waiting> taken, Exception first, CancellationToken cancellation)
    {
        LoopLog.BatchFailed(_log, Partition.Value, taken.Count, first);
        foreach (var waiting in taken)
        {
            List<PlantEvent> one = [waiting.Event];
            StepResult result;
            try
            {
                result = Step.Run(State, one);
                await CommitAsync(one, result, cancellation);
            }
            catch (Exception fault) when (IsDefect(fault))
            {
                LoopLog.EventFailed(_log, Partition.Value, waiting.Event.GetType().Name, fault);
                result = SetAside(waiting.Event);
                await CommitAsync([], result, cancellation);
            }

            Answer(waiting, result.Outcomes[0]);
            Tell(result);
        }
    }

    private StepResult SetAside(PlantEvent broken)
    {
        var bytes = broken is MessageArrived message ? message.Payload : BytesOf(broken);
        var refusal = new Refusal(Guid.CreateVersion7(), broken.At, (broken as MessageArrived)?.Topic ?? broken.GetType().Name, bytes, RefusalReason.Defect, "");
        var no = Outcome.TurnedDown.Because(TurnedDownKind.Unknown, "", Core.Reasons.Reason.Of("defect"));
        return new StepResult(State, [], [refusal], [], [], [no]);
    }

    // What the fold fails on may be half made, and the journal's form refuses that as well.
    private static byte[] BytesOf(PlantEvent broken)
    {
        try
        {
            return JournalCodec.Write([broken]);
        }
        catch (Exception fault) when (IsDefect(fault))
        {
            return Encoding.UTF8.GetBytes(broken.GetType().Name);
        }
    }

    private readonly record struct Waiting(PlantEvent Event, TaskCompletionSource<Outcome> Answer)
    {
        public bool IsMessage => Event is MessageArrived;
    }
}
