using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.WhatIf;

/// <summary>Where a run stands.</summary>
public enum RunState
{
    /// <summary>Another one is under way.</summary>
    Waiting = 0,
    /// <summary>Under way.</summary>
    Running,
    /// <summary>There is a result.</summary>
    Done,
    /// <summary>A person cancelled it, or the server stopped.</summary>
    Cancelled,
    /// <summary>It could not be done.</summary>
    Failed,
}

/// <summary>History replayed once as the plan stands and once with some limits changed: what was asked, how far it is, what came out. Read by many threads while one works on it.</summary>
/// <param name="id">Its id, UUIDv7.</param>
/// <param name="askedAt">When it was asked for.</param>
/// <param name="from">Start of the time that is compared.</param>
/// <param name="to">Its end.</param>
/// <param name="changes">The changed limits.</param>
/// <param name="plan">The plan as it stands.</param>
/// <param name="changed">The plan with the changes.</param>
internal sealed class LimitRun(Guid id, Instant askedAt, Instant from, Instant to, IReadOnlyList<LimitChange> changes, PlantPlan plan, PlantPlan changed) : IDisposable
{
    private readonly CancellationTokenSource _cancelling = new();
    private readonly Lock _turn = new();
    private double _progress;

    public Guid Id => id;
    public Instant AskedAt => askedAt;
    public Instant From => from;
    public Instant To => to;
    public IReadOnlyList<LimitChange> Changes => changes;
    public PlantPlan Plan => plan;
    public PlantPlan Changed => changed;

    public RunState State { get; private set; }
    public LimitResult? Result { get; private set; }
    public string? Fault { get; private set; }

    /// <summary>How much of it is done, 0 to 1.</summary>
    public double Progress => Volatile.Read(ref _progress);

    public CancellationToken Cancellation => _cancelling.Token;

    public void Reach(double progress) => Volatile.Write(ref _progress, progress);

    /// <summary>Begins; false when it was cancelled before.</summary>
    public bool TryBegin() => TryBecome(RunState.Running);

    public void Finish(LimitResult result)
    {
        lock (_turn)
        {
            if (State != RunState.Running) return;
            (Result, State) = (result, RunState.Done);
            Reach(1);
        }
    }

    public void Fail(string fault)
    {
        lock (_turn)
        {
            if (State is RunState.Running) (Fault, State) = (fault, RunState.Failed);
        }
    }

    /// <summary>Ends it, unless it has ended.</summary>
    public void Cancel()
    {
        if (TryBecome(RunState.Cancelled)) _cancelling.Cancel();
    }

    public void Dispose() => _cancelling.Dispose();

    private bool TryBecome(RunState next)
    {
        lock (_turn)
        {
            if (State is not (RunState.Waiting or RunState.Running)) return false;
            State = next;
            return true;
        }
    }
}
