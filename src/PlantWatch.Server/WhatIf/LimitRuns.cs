using System.Threading.Channels;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.WhatIf;

/// <summary>The runs: one at a time, a few that wait, and the last ones with their results. Nothing of them outlives the server.</summary>
internal sealed class LimitRuns(PlantWatchOptions options, PlantHost host, TimeProvider clock, ILogger<LimitRuns> log) : BackgroundService
{
    /// <summary>How many may wait.</summary>
    public const int MostWaiting = 3;

    private const int Kept = 8;

    private readonly Channel<LimitRun> _queue = Channel.CreateBounded<LimitRun>(new BoundedChannelOptions(Kept) { SingleReader = true });
    private readonly Lock _turn = new();
    private readonly List<LimitRun> _runs = [];

    /// <summary>Takes a run; null when too many wait already.</summary>
    public LimitRun? Ask(Instant from, Instant to, IReadOnlyList<LimitChange> changes, PlantPlan plan, PlantPlan changed)
    {
        lock (_turn)
        {
            if (_runs.Count(r => r.State == RunState.Waiting) >= MostWaiting) return null;
            var now = Instant.From(clock.GetUtcNow());
            var run = new LimitRun(Guid.CreateVersion7(), now, from, to, changes, plan, changed);
            if (!_queue.Writer.TryWrite(run)) return null;
            _runs.Add(run);
            Forget();
            return run;
        }
    }

    /// <summary>A run that is known; null when it is not, or is forgotten.</summary>
    public LimitRun? Find(Guid id)
    {
        lock (_turn) return _runs.Find(r => r.Id == id);
    }

    /// <summary>How many come before it.</summary>
    public int Ahead(LimitRun run)
    {
        lock (_turn) return run.State == RunState.Waiting ? _runs.TakeWhile(r => r != run).Count(r => r.State is RunState.Waiting or RunState.Running) : 0;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var run in _queue.Reader.ReadAllAsync(stoppingToken))
        {
            if (!run.TryBegin()) continue;
            await using var stop = stoppingToken.Register(run.Cancel);
            // A thread of its own: a replay of minutes must not hold one that answers requests.
            await Task.Factory.StartNew(() => Work(run), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        }
    }

    private void Work(LimitRun run)
    {
        Thread.CurrentThread.Priority = ThreadPriority.Lowest;
        try
        {
            var result = new LimitReplay(Path.Combine(options.Data, "record.db"), new Rest(IsBusy, run.Cancellation).Now).Run(run);
            run.Finish(result);
            WhatIfLog.Done(log, run.Id, (run.To - run.From).TotalDays, result.Readings, result.Took.TotalSeconds);
        }
        catch (OperationCanceledException)
        {
            run.Cancel();
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            run.Fail(fault is StorageException or IOException ? fault.Message : "");
            WhatIfLog.Failed(log, run.Id, fault);
        }
    }

    // What came in and is not stored yet goes before.
    private bool IsBusy() => host.Everything.Any(w => w.InFlight > 0 || w.Depth > 0);

    private void Forget()
    {
        while (_runs.Count > Kept && _runs.FindIndex(r => r.State is not (RunState.Waiting or RunState.Running)) is >= 0 and var old)
        {
            _runs[old].Dispose();
            _runs.RemoveAt(old);
        }
    }
}
