namespace PlantWatch.Server.Loop;

/// <summary>What the loop says, ids 4000 to 4099.</summary>
internal static partial class LoopLog
{
    [LoggerMessage(4000, LogLevel.Information, "Circuit {Circuit} stands at batch {Seq} after {Replayed} batches from the journal, in {Milliseconds} ms")]
    public static partial void Restored(ILogger log, string circuit, long seq, int replayed, double milliseconds);

    [LoggerMessage(4001, LogLevel.Information, "Plant file in force: {Circuits} circuits, {Probes} probes")]
    public static partial void PlanInForce(ILogger log, int circuits, int probes);

    [LoggerMessage(4010, LogLevel.Error, "Commit failed, attempt {Attempt}: nothing is acknowledged until it succeeds")]
    public static partial void CommitFailed(ILogger log, int attempt, Exception fault);

    [LoggerMessage(4011, LogLevel.Warning, "Commits succeed again after {Attempt} attempts")]
    public static partial void CommitRecovered(ILogger log, int attempt);

    [LoggerMessage(4012, LogLevel.Critical, "The record has another writer: this server stops committing")]
    public static partial void OutOfSequence(ILogger log, Exception fault);

    [LoggerMessage(4013, LogLevel.Error, "Circuit {Circuit}: a batch can never be committed")]
    public static partial void CommitImpossible(ILogger log, string circuit, Exception fault);

    [LoggerMessage(4020, LogLevel.Error, "Circuit {Circuit}: the fold failed on a batch of {Count}; it goes on one by one")]
    public static partial void BatchFailed(ILogger log, string circuit, int count, Exception fault);

    [LoggerMessage(4021, LogLevel.Error, "Circuit {Circuit}: an event of kind {Kind} was set aside because the fold failed on it")]
    public static partial void EventFailed(ILogger log, string circuit, string kind, Exception fault);

    [LoggerMessage(4030, LogLevel.Error, "Circuit {Circuit}: a listener failed; the circuit goes on")]
    public static partial void ListenerFailed(ILogger log, string circuit, Exception fault);

    [LoggerMessage(4031, LogLevel.Warning, "Circuit {Circuit}: no snapshot could be kept")]
    public static partial void SnapshotFailed(ILogger log, string circuit, Exception fault);

    [LoggerMessage(4032, LogLevel.Error, "A listener of the commits failed; commits go on")]
    public static partial void CommitListenerFailed(ILogger log, Exception fault);

    [LoggerMessage(4040, LogLevel.Error, "Circuit {Circuit}: a batch of {Count} could not even be set aside; whoever sent it is told that it was not taken, and the circuit goes on")]
    public static partial void BatchLost(ILogger log, string circuit, int count, Exception fault);
}
