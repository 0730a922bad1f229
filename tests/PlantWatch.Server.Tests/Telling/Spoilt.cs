using Microsoft.Extensions.Logging;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Telling;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>An outbox that fails where the test says so: a full disk, a defect of ours.</summary>
internal sealed class SpoiltOutbox(IOutbox inner) : IOutbox
{
    /// <summary>Notes of attempts at these notices cannot be written.</summary>
    public Func<Guid, bool> NotesFail { get; set; } = _ => false;

    /// <summary>What is known of these partitions cannot be read.</summary>
    public Func<PartitionKey, bool> ReadsFail { get; set; } = _ => false;

    /// <summary>Writing down such notices fails.</summary>
    public Func<Core.Alarms.Telling.Notice, bool> QueueFails { get; set; } = _ => false;

    public ValueTask QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at, CancellationToken cancellation) =>
        notices.Any(n => QueueFails(n.Notice)) ? throw new InvalidOperationException("spoilt") : inner.QueueAsync(partition, notices, at, cancellation);

    public ValueTask<IReadOnlyList<OutboxItem>> OutboxAsync(PartitionKey partition, CancellationToken cancellation) =>
        ReadsFail(partition) ? throw new InvalidOperationException("spoilt") : inner.OutboxAsync(partition, cancellation);

    public ValueTask NoteAsync(PartitionKey partition, Guid notice, Attempt attempt, CancellationToken cancellation) =>
        NotesFail(notice) ? throw new InvalidOperationException("spoilt") : inner.NoteAsync(partition, notice, attempt, cancellation);

    public ValueTask<long> ForgetAsync(PartitionKey partition, Instant before, IReadOnlyCollection<Guid> keptAlarms, CancellationToken cancellation) => inner.ForgetAsync(partition, before, keptAlarms, cancellation);
}

/// <summary>A broker's side that counts what it is told, notices only.</summary>
internal sealed class CountingTopic : IAlarmTopic
{
    private readonly List<string> _told = [];

    public IReadOnlyList<string> Told
    {
        get
        {
            lock (_told) return [.. _told];
        }
    }

    public Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, CancellationToken cancellation)
    {
        lock (_told)
            if (!retain) _told.Add(topic);
        return Task.CompletedTask;
    }
}

/// <summary>Letters without a picture.</summary>
internal sealed class NoPictures : IStripPictures
{
    public Task<byte[]?> OfAsync(CircuitWorker circuit, Message message, Server.Words.Wording words, CancellationToken cancellation) => Task.FromResult<byte[]?>(null);
}

/// <summary>Letters that enclose nothing.</summary>
internal sealed class NoEnclosure : IEnclosures
{
    public Task<Enclosed?> OfAsync(Core.Plans.PlantPlan plan, Message message, CancellationToken cancellation) => Task.FromResult<Enclosed?>(null);
}

/// <summary>Prints as the test says.</summary>
internal sealed class HandPress : IEnclosures
{
    private int _begun;

    public Func<Task<Enclosed?>> Prints { get; set; } = () => Task.FromResult<Enclosed?>(new("sheet.pdf", "application/pdf", [1]));

    public int Begun => Volatile.Read(ref _begun);

    public Task<Enclosed?> OfAsync(Core.Plans.PlantPlan plan, Message message, CancellationToken cancellation)
    {
        Interlocked.Increment(ref _begun);
        return Prints();
    }
}

/// <summary>Keeps the lines of the log and counts them by their number.</summary>
internal sealed class KeptLog : ILoggerProvider, ILogger
{
    private readonly List<string> _lines = [];

    public int Count(EventId id)
    {
        lock (_lines) return _lines.Count(line => line.StartsWith($"{id.Id} ", StringComparison.Ordinal));
    }

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        lock (_lines) _lines.Add($"{eventId.Id} {formatter(state, exception)} {exception}");
    }

    public void Dispose()
    {
    }
}
