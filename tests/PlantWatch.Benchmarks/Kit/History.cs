using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Storage;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Makes a past: folds and stores what probes would have sent, with the same code as the loop but many batches a transaction, so that a day takes a minute.</summary>
internal sealed class History(IRecordStore store, PartitionKey partition, int probes)
{
    private const int BatchesATransaction = 2000;
    private readonly Feed _feed = new(probes);
    private readonly List<Commit> _waiting = [];
    private CircuitState? _state;
    private long _seq;

    /// <summary>The state after the newest batch.</summary>
    public CircuitState State => _state ?? throw new InvalidOperationException("nothing has happened yet");

    /// <summary>Batches so far.</summary>
    public long Seq => _seq;

    public CircuitPlan Plan { get; } = Plants.Plan(probes);

    /// <summary>Lets seconds go by; a batch is a second, or a part of it.</summary>
    public async Task RunAsync(int seconds, int batchesASecond)
    {
        if (_state is null)
        {
            _state = CircuitState.Of(new CircuitPlan { Id = Plan.Id, Name = Plan.Name, TimeZone = Plan.TimeZone });
            await AddAsync([new PlanLoaded(Feed.Start, Plan)]);
        }

        for (var i = 0; i < seconds * batchesASecond; i++) await AddAsync(_feed.Next(probes / batchesASecond));
        await FlushAsync();
    }

    /// <summary>Keeps a snapshot of now.</summary>
    public async Task SnapshotAsync()
    {
        var bytes = PlantJson.Write(State);
        await store.SaveSnapshotAsync(partition, new Snapshot(_seq, State.FoldVersion, PlantJson.Hash(bytes), bytes), default);
    }

    private async Task AddAsync(List<PlantEvent> events)
    {
        var result = Step.Run(State, events);
        _state = result.Next;
        _waiting.Add(new Commit(partition, ++_seq, events[^1].At, JournalCodec.Write(events), result with { Next = CircuitState.Of(CircuitPlan.Nowhere) }));
        if (_waiting.Count >= BatchesATransaction) await FlushAsync();
    }

    private async Task FlushAsync()
    {
        if (_waiting.Count > 0) await store.CommitAsync(_waiting, default);
        _waiting.Clear();
    }
}
