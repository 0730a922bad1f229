using System.Collections.Concurrent;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>The outbox as it lies on the disk, held in memory a circuit at a time: everything is written down first and known here afterwards.</summary>
internal sealed class OutboxBook(IOutbox outbox, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan Kept = TimeSpan.FromDays(35);
    private readonly ConcurrentDictionary<PartitionKey, IReadOnlyList<OutboxItem>> _items = new();
    private static readonly TimeSpan Clears = TimeSpan.FromDays(1);
    private readonly ConcurrentDictionary<PartitionKey, Instant> _clearedAt = new();
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>What is known of a circuit's messages, in the order in which they were written; empty before it was opened.</summary>
    public IReadOnlyList<OutboxItem> Of(PartitionKey partition) => _items.GetValueOrDefault(partition) ?? [];

    /// <summary>Reads what an earlier process left, and once a day lets go of what is long over.</summary>
    public async Task OpenAsync(PartitionKey partition, IReadOnlyCollection<Guid> liveAlarms, CancellationToken cancellation)
    {
        if (_items.ContainsKey(partition) && _clearedAt.TryGetValue(partition, out var at) && Now - at < Clears) return;
        await InTurnAsync(
            async () =>
            {
                await outbox.ForgetAsync(partition, Now - Kept, liveAlarms, cancellation);
                _items[partition] = await outbox.OutboxAsync(partition, cancellation);
                _clearedAt[partition] = Now;
            },
            cancellation);
    }

    /// <summary>Circuits that are gone, or go by another name, are read anew when they come back.</summary>
    public void KeepOnly(IReadOnlyCollection<PartitionKey> partitions)
    {
        foreach (var gone in _items.Keys.Except(partitions)) _items.TryRemove(gone, out _);
    }

    /// <summary>Writes what one look found to be owed, all of it or nothing.</summary>
    public Task QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, CancellationToken cancellation) => InTurnAsync(
        async () =>
        {
            var at = Now;
            await outbox.QueueAsync(partition, notices, at, cancellation);
            _items[partition] = [.. Of(partition), .. notices.Select(notice => OutboxItem.New(notice, at))];
        },
        cancellation);

    /// <summary>Notes an attempt. What was sent must be known as sent even while the server stops, or it is sent twice.</summary>
    public Task NoteAsync(PartitionKey partition, Guid notice, Attempt attempt) => InTurnAsync(
        async () =>
        {
            await outbox.NoteAsync(partition, notice, attempt, CancellationToken.None);
            _items[partition] = [.. Of(partition).Select(item => item.Notice.Id == notice ? item.After(attempt) : item)];
        },
        CancellationToken.None);

    /// <summary>What waits for a channel that is gone from the plan can go nowhere.</summary>
    public async Task GiveUpAsync(PartitionKey partition, IReadOnlyCollection<string> channels)
    {
        foreach (var item in Of(partition).Where(item => item.Fate == Fate.Waiting && !channels.Contains(item.Notice.Channel)))
            await NoteAsync(partition, item.Notice.Id, new(Now, Fate.GivenUp, "the channel is gone from the plant file"));
    }

    public void Dispose() => _turn.Dispose();

    private Instant Now => Instant.From(clock.GetUtcNow());

    private async Task InTurnAsync(Func<Task> work, CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            await work();
        }
        finally
        {
            _turn.Release();
        }
    }
}
