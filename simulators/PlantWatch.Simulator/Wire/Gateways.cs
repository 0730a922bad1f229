using PlantWatch.Simulator.Plant;

namespace PlantWatch.Simulator.Wire;

/// <summary>All connections of the plant; a connection is opened when it first has something to say.</summary>
internal sealed class Gateways(string host, int port) : IAsyncDisposable
{
    private readonly Dictionary<string, Gateway> open = [];

    /// <summary>Messages acknowledged.</summary>
    public long Acknowledged => open.Values.Sum(g => g.Acknowledged);

    /// <summary>Messages sent more than once.</summary>
    public long Retries => open.Values.Sum(g => g.Retries);

    /// <summary>Connections.</summary>
    public int Count => open.Count;

    /// <summary>Sends all messages, those of one gateway in order, gateways side by side; returns when all are acknowledged.</summary>
    public Task SendAsync(IReadOnlyList<Outgoing> messages, CancellationToken cancellation) =>
        Task.WhenAll(messages.GroupBy(m => m.Gateway).Select(g => For(g.Key).SendAsync(g, cancellation)).ToArray());

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var gateway in open.Values) await gateway.DisposeAsync().ConfigureAwait(false);
    }

    private Gateway For(string name)
    {
        if (!open.TryGetValue(name, out var gateway)) open[name] = gateway = new Gateway(name, host, port);
        return gateway;
    }
}
