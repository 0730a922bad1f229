using System.Threading.Channels;
using PlantWatch.Storage;

namespace PlantWatch.Server.Loop;

/// <summary>Joins the batches of all circuits into one transaction: one flush to disk for all that wait (group commit).</summary>
internal sealed class Committer(IRecordStore store, TimeProvider clock, ILogger<Committer> log) : IAsyncDisposable
{
    private readonly Channel<Waiting> queue = Channel.CreateUnbounded<Waiting>(new UnboundedChannelOptions { SingleReader = true });
    private readonly CancellationTokenSource stopping = new();
    private Task running = Task.CompletedTask;
    private int stopped;

    /// <summary>The failure that keeps commits from being made at the moment; null when all is well.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Raised when a batch did not follow: another process writes here. Nothing more is committed.</summary>
    public event Action<Exception>? Fatal;

    /// <summary>Raised after each transaction with how long it took.</summary>
    public event Action<TimeSpan, int>? Took;

    public void Start() => running = Task.Run(RunAsync);

    /// <summary>Ends when the batch is durable. A failing disk is tried again until the server stops; meanwhile nothing is acknowledged.</summary>
    public async Task<CommitReceipt> CommitAsync(Commit commit, CancellationToken cancellation)
    {
        var waiting = new Waiting(commit, new TaskCompletionSource<CommitReceipt>(TaskCreationOptions.RunContinuationsAsynchronously));
        await queue.Writer.WriteAsync(waiting, cancellation);
        // Once handed over the batch may be written, so the answer is waited for even when the server is about to stop.
        return await waiting.Done.Task;
    }

    /// <summary>From now on a commit that fails is not tried again: a server that is asked to end must not wait for room on the disk. What is not committed was not acknowledged.</summary>
    public void GiveUp() => stopping.Cancel();

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref stopped, 1) == 1) return;
        queue.Writer.TryComplete();
        await stopping.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        stopping.Dispose();
    }

    private async Task RunAsync()
    {
        var taken = new List<Waiting>();
        while (await queue.Reader.WaitToReadAsync())
        {
            taken.Clear();
            while (queue.Reader.TryRead(out var waiting)) taken.Add(waiting);
            await CommitAllAsync(taken);
        }
    }

    private async Task CommitAllAsync(List<Waiting> taken)
    {
        List<Commit> commits = [.. taken.Select(w => w.Commit)];
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                var started = clock.GetTimestamp();
                var receipts = await store.CommitAsync(commits, CancellationToken.None);
                Took?.Invoke(clock.GetElapsedTime(started), commits.Count);
                Recovered(attempt);
                for (var i = 0; i < taken.Count; i++) taken[i].Done.TrySetResult(receipts[i]);
                return;
            }
            catch (OutOfSequenceException fault)
            {
                LoopLog.OutOfSequence(log, fault);
                foreach (var waiting in taken) waiting.Done.TrySetException(fault);
                Fatal?.Invoke(fault);
                return;
            }
            catch (Exception fault) when (NeverPasses(fault))
            {
                await CommitAloneAsync(taken, fault);
                return;
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                Trouble = fault.Message;
                LoopLog.CommitFailed(log, attempt, fault);
                if (stopping.IsCancellationRequested || !await WaitAsync(CommitRetry.DelayAfter(attempt)))
                {
                    foreach (var waiting in taken) waiting.Done.TrySetCanceled(CancellationToken.None);
                    return;
                }
            }
        }
    }

    // What cannot be written down today, such as a number that is none, cannot be written down in five seconds either.
    private static bool NeverPasses(Exception fault) =>
        fault is StorageException { MayPass: false } or ArgumentException or NotSupportedException or System.Text.Json.JsonException;

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
            await Task.Delay(delay, stopping.Token);
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
