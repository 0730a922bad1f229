using System.Threading.Channels;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>Joins the batches of all circuits into one transaction: one flush to disk for all that wait (group commit).</summary>
internal sealed class Committer(IRecordStore store, TimeProvider clock, ILogger<Committer> log) : IAsyncDisposable
{
    private readonly Channel<Waiting> _queue = Channel.CreateUnbounded<Waiting>(new UnboundedChannelOptions { SingleReader = true });
    private readonly CancellationTokenSource _stopping = new();
    private Task _running = Task.CompletedTask;
    private int _stopped;
    private OutOfSequenceException? _otherWriter;

    /// <summary>The failure that keeps commits from being made at the moment; null when all is well.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Raised when a batch did not follow: another process writes here. Nothing more is committed.</summary>
    public event Action<Exception>? Fatal;

    /// <summary>Raised after each transaction with how long it took and how many events it made durable.</summary>
    public event Action<TimeSpan, int>? Took;

    public void Start() => _running = Task.Run(RunAsync);

    /// <summary>Ends when the batch is durable. A failing disk is tried again until the server stops; meanwhile nothing is acknowledged.</summary>
    public async Task<CommitReceipt> CommitAsync(Commit commit, CancellationToken cancellation)
    {
        var waiting = new Waiting(commit, new TaskCompletionSource<CommitReceipt>(TaskCreationOptions.RunContinuationsAsynchronously));
        await _queue.Writer.WriteAsync(waiting, cancellation);
        // Once handed over the batch may be written, so the answer is waited for even when the server is about to stop.
        return await waiting.Done.Task;
    }

    /// <summary>From now on a commit that fails is not tried again: a server that is asked to end must not wait for room on the disk. What is not committed was not acknowledged.</summary>
    public void GiveUp() => _stopping.Cancel();

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _stopped, 1) == 1) return;
        _queue.Writer.TryComplete();
        await _stopping.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stopping.Dispose();
    }

    private async Task RunAsync()
    {
        var taken = new List<Waiting>();
        while (await _queue.Reader.WaitToReadAsync())
        {
            taken.Clear();
            while (_queue.Reader.TryRead(out var waiting)) taken.Add(waiting);
            await CommitAllAsync(taken);
        }
    }

    private async Task CommitAllAsync(List<Waiting> taken)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                if (_otherWriter is not null) throw _otherWriter;
                await CommitOnceAsync(taken, attempt);
                return;
            }
            catch (OutOfSequenceException fault)
            {
                LoopLog.OutOfSequence(log, fault);
                _otherWriter = fault;
                foreach (var waiting in taken) waiting.Done.TrySetException(fault);
                Fatal?.Invoke(fault);
                return;
            }
            catch (Exception fault) when (MayPass(fault))
            {
                Trouble = fault.Message;
                LoopLog.CommitFailed(log, attempt, fault);
                if (_stopping.IsCancellationRequested || !await WaitAsync(CommitRetry.DelayAfter(attempt)))
                {
                    foreach (var waiting in taken) waiting.Done.TrySetCanceled(CancellationToken.None);
                    return;
                }
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                await CommitAloneAsync(taken, fault);
                return;
            }
        }
    }

    private async Task CommitOnceAsync(List<Waiting> taken, int attempt)
    {
        var started = clock.GetTimestamp();
        var receipts = await store.CommitAsync([.. taken.Select(w => w.Commit)], CancellationToken.None);
        Recovered(attempt);
        for (var i = 0; i < taken.Count; i++) taken[i].Done.TrySetResult(receipts[i]);
        Tell(clock.GetElapsedTime(started), taken.Sum(w => w.Commit.Result.Outcomes.Length));
    }

    // It is on disk and answered: a listener that fails must not have it committed again.
    private void Tell(TimeSpan took, int events)
    {
        try
        {
            Took?.Invoke(took, events);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            LoopLog.CommitListenerFailed(log, fault);
        }
    }

    // The disk may have room again. Anything else is a defect, of which waiting only makes a standstill: what cannot be written down
    // today, such as a number that is none, cannot be written down in five seconds either.
    private static bool MayPass(Exception fault) => fault is StorageException { MayPass: true } or IOException;

    // Trying again cannot help: one of the batches is at fault. Each goes alone, so that it stops nobody else, and its circuit is told.
    private async Task CommitAloneAsync(List<Waiting> taken, Exception fault)
    {
        if (taken is [var guilty])
        {
            LoopLog.CommitImpossible(log, guilty.Commit.Partition.Value, fault);
            guilty.Done.TrySetException(fault);
            return;
        }

        foreach (var one in taken) await CommitAllAsync([one]);
    }

    private void Recovered(int attempt)
    {
        if (attempt == 1) return;
        Trouble = null;
        LoopLog.CommitRecovered(log, attempt);
    }

    private async Task<bool> WaitAsync(TimeSpan delay)
    {
        try
        {
            await Task.Delay(delay, _stopping.Token);
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    private sealed record Waiting(Commit Commit, TaskCompletionSource<CommitReceipt> Done);
}

/// <summary>How long to wait before a failed commit is tried again: doubling from 50 ms, at most 5 s.</summary>
internal static class CommitRetry
{
    public static TimeSpan DelayAfter(int attempt) => TimeSpan.FromMilliseconds(Math.Min(5000, 50 * Math.Pow(2, Math.Clamp(attempt, 1, 10) - 1)));
}
