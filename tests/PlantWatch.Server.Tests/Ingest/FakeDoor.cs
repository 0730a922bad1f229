using System.Collections.Concurrent;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>A door whose commits happen when the test says so.</summary>
internal sealed class FakeDoor : IDoor
{
    private readonly ConcurrentQueue<(IncomingMessage Message, TaskCompletionSource Commit)> _taken = new();
    private readonly ConcurrentQueue<(string Session, Instant Since)> _lost = new();

    /// <summary>Commit each message at once.</summary>
    public bool CommitsByItself { get; set; }

    /// <summary>Refuse a message already at the door.</summary>
    public Exception? Refuses { get; set; }

    public IReadOnlyCollection<string> Topics { get; private set; } = [];

    public string? Own { get; set; }

    public event Action? TopicsChanged;

    public bool IsOwn(string topic) => topic == Own;

    public IReadOnlyList<IncomingMessage> Messages => [.. _taken.Select(taken => taken.Message)];

    public IReadOnlyList<(string Session, Instant Since)> LostSessions => [.. _lost];

    public void SetTopics(params string[] topics)
    {
        Topics = topics;
        TopicsChanged?.Invoke();
    }

    public void Commit(int index) => _taken.ElementAt(index).Commit.TrySetResult();

    public void CommitAll()
    {
        foreach (var taken in _taken) taken.Commit.TrySetResult();
    }

    public void Fail(int index, Exception exception) => _taken.ElementAt(index).Commit.TrySetException(exception);

    public void Cancel(int index) => _taken.ElementAt(index).Commit.TrySetCanceled();

    public ValueTask<Task> MessageAsync(IncomingMessage message, CancellationToken cancellation)
    {
        if (Refuses is { } refusal) throw refusal;
        var commit = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _taken.Enqueue((message, commit));
        if (CommitsByItself) commit.SetResult();
        return new(commit.Task);
    }

    public Task<Outcome> SendAsync(string circuit, Func<Instant, PlantEvent> make, CancellationToken cancellation) => throw new NotSupportedException();

    public Task SessionLostAsync(string session, Instant since, CancellationToken cancellation)
    {
        _lost.Enqueue((session, since));
        return Task.CompletedTask;
    }
}
