using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Loop;

/// <summary>What a failing record does to those who wait for it: nothing is answered as durable that is not, and nobody waits for ever.</summary>
public sealed class CommitterTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    private static readonly Instant At = Instant.FromUtc(2026, 3, 1);

    [Fact]
    public async Task A_disk_that_fails_for_a_while_only_makes_the_commit_late()
    {
        var left = 2;
        await using var committer = Started(new FailingStore(() => left-- > 0 ? new StorageException("disk full", mayPass: true) : null));
        Assert.Equal(1, (await committer.CommitAsync(Batch("hall", 1), default).WaitAsync(Patience)).Seq);
        Assert.Null(committer.Trouble);
    }

    [Fact]
    public async Task A_disk_that_stays_full_does_not_keep_the_server_from_stopping_and_nothing_is_acknowledged()
    {
        var store = new FailingStore(() => new StorageException("disk full", mayPass: true));
        await using var committer = Started(store);
        var worker = Worker(store, committer, out var commit);
        Assert.False(commit.IsCompleted);

        committer.GiveUp();
        await worker.DisposeAsync().AsTask().WaitAsync(Patience);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => commit.WaitAsync(Patience));
        Assert.Equal((0, 0L), (worker.InFlight, worker.Seq));
    }

    [Fact]
    public async Task A_defect_of_the_store_is_told_at_once_and_not_tried_for_ever()
    {
        var store = new FailingStore(() => new InvalidOperationException("a defect"));
        await using var committer = Started(store);
        await Assert.ThrowsAsync<InvalidOperationException>(() => committer.CommitAsync(Batch("hall", 1), default).WaitAsync(Patience));
        Assert.Equal(1, store.Attempts);
    }

    [Fact]
    public async Task After_a_foreign_writer_nothing_more_is_committed_for_any_circuit()
    {
        var store = new FailingStore(() => null);
        await using var committer = Started(store);
        var fatal = 0;
        committer.Fatal += _ => fatal++;
        await Assert.ThrowsAsync<OutOfSequenceException>(() => committer.CommitAsync(Batch("hall", 7), default).WaitAsync(Patience));
        await Assert.ThrowsAsync<OutOfSequenceException>(() => committer.CommitAsync(Batch("spa", 1), default).WaitAsync(Patience));
        Assert.Equal((1, 0L), (store.Attempts, await store.LastSeqAsync(new PartitionKey("spa"), default)));
        Assert.True(fatal > 0);
    }

    [Fact]
    public async Task A_listener_that_fails_does_not_have_a_batch_committed_twice()
    {
        var store = new FailingStore(() => null);
        await using var committer = Started(store);
        committer.Took += (_, _) => throw new InvalidOperationException("a listener");
        await committer.CommitAsync(Batch("hall", 1), default).WaitAsync(Patience);
        await committer.CommitAsync(Batch("hall", 2), default).WaitAsync(Patience);
        Assert.Equal(2, store.Attempts);
    }

    private static Committer Started(IRecordStore store)
    {
        var committer = new Committer(store, TimeProvider.System, NullLogger<Committer>.Instance);
        committer.Start();
        return committer;
    }

    private static CircuitWorker Worker(IRecordStore store, Committer committer, out Task<Outcome> commit)
    {
        var key = new PartitionKey("hall");
        var snapshots = new Snapshots(store, TimeProvider.System, NullLogger<Snapshots>.Instance);
        var worker = new CircuitWorker(new RestoredCircuit(key, State(key), 0, At, default, 0), committer, snapshots, TimeProvider.System, NullLogger.Instance);
        var place = worker.SendAsync(at => new MessageArrived(at, "hall/ph", "7.4"u8.ToArray(), false, null), default);
        commit = place.AsTask().GetAwaiter().GetResult();
        worker.Start();
        return worker;
    }

    private static CircuitState State(PartitionKey key) => CircuitState.Of(new CircuitPlan { Id = key.Value, Name = key.Value, TimeZone = "UTC" });

    private static Commit Batch(string circuit, long seq)
    {
        var key = new PartitionKey(circuit);
        PlantEvent[] events = [new ClockTicked(At + TimeSpan.FromSeconds(seq))];
        return new Commit(key, seq, events[0].At, JournalCodec.Write(events), Step.Run(State(key), events));
    }
}
