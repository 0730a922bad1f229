using PlantWatch.Simulator.Plant;

namespace PlantWatch.Simulator.Wire;

/// <summary>All connections of the plant; a connection is opened when it first has something to say.</summary>
internal sealed class Gateways(string host, int port) : IAsyncDisposable
{
    private readonly Dictionary<string, Gateway> _open = [];

    /// <summary>Messages acknowledged.</summary>
    public long Acknowledged => _open.Values.Sum(g => g.Acknowledged);

    /// <summary>Messages sent more than once.</summary>
    public long Retries => _open.Values.Sum(g => g.Retries);

    /// <summary>Connections.</summary>
    public int Count => _open.Count;

    /// <summary>Sends all messages, those of one gateway in order, gateways side by side; returns when all are acknowledged.</summary>
    public Task SendAsync(IReadOnlyList<Outgoing> messages, CancellationToken cancellation) =>
        Task.WhenAll(messages.GroupBy(m => m.Gateway).Select(g => For(g.Key).SendAsync(g, cancellation)).ToArray());

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var gateway in _open.Values) await gateway.DisposeAsync().ConfigureAwait(false);
    }

    private Gateway For(string name)
    {
        if (!_open.TryGetValue(name, out var gateway)) _open[name] = gateway = new Gateway(name, host, port);
        return gateway;
    }
}
