using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public sealed partial class InMemoryStore : IOutbox
{
    public ValueTask QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at, CancellationToken cancellation)
    {
        lock (_door)
        {
            var outbox = Of(_drawers, partition).Outbox;
            foreach (var notice in notices)
                if (!outbox.Exists(item => item.Notice.Id == notice.Notice.Id)) outbox.Add(OutboxItem.New(notice, at));
        }

        return ValueTask.CompletedTask;
    }

    public ValueTask<IReadOnlyList<OutboxItem>> OutboxAsync(PartitionKey partition, CancellationToken cancellation) => Ask(partition, d => (IReadOnlyList<OutboxItem>)[.. d.Outbox]);

    public ValueTask NoteAsync(PartitionKey partition, Guid notice, Attempt attempt, CancellationToken cancellation)
    {
        lock (_door)
        {
            var outbox = Of(_drawers, partition).Outbox;
            if (outbox.FindIndex(item => item.Notice.Id == notice) is var place and >= 0) outbox[place] = outbox[place].After(attempt);
        }

        return ValueTask.CompletedTask;
    }

    public ValueTask<long> ForgetAsync(PartitionKey partition, Instant before, IReadOnlyCollection<Guid> keptAlarms, CancellationToken cancellation) => Ask(partition, d =>
    {
        var gone = d.Outbox.GroupBy(item => item.Notice.Alarm).Where(alarm => !keptAlarms.Contains(alarm.Key) && alarm.All(i => i.Fate != Fate.Waiting && i.QueuedAt < before)).Select(a => a.Key).ToHashSet();
        return (long)d.Outbox.RemoveAll(item => gone.Contains(item.Notice.Alarm));
    });
}
