namespace PlantWatch.Server.Ingest;

/// <summary>How many messages of a connection may be taken in before the broker is known to have our acknowledgements for them.</summary>
/// <remarks>
/// What comes again after a crash is what the broker had no acknowledgement for, and the memory of packets must hold all of it. The Receive
/// Maximum should see to that, but mosquitto 2.0.11 sends all that waits once a window that was full at the reconnect has moved; and an acknowledgement
/// that was sent is not one that arrived: with unread data in it, a connection that dies takes them along. A broker answers in order,
/// so its answer to a ping proves that it has every acknowledgement sent before.
/// </remarks>
/// <param name="size">Messages taken in and not proven; at least 1.</param>
/// <param name="ping">Ends when the broker has answered a ping.</param>
/// <param name="failed">Called with why no answer came.</param>
internal sealed class ReceiveWindow(int size, Func<Task> ping, Action<Exception> failed) : IDisposable
{
    private readonly SemaphoreSlim _room = new(size);
    private readonly Lock _counting = new();
    private readonly int _provedAtOnce = Math.Max(1, size / 8);
    private int _acknowledged;
    private bool _proving;

    /// <summary>Waits for room for one message. Meanwhile nothing more is handed over, and the broker's own queue keeps what there is.</summary>
    public Task EnterAsync(CancellationToken cancellation) => _room.WaitAsync(cancellation);

    /// <summary>A message left that nobody acknowledges (QoS 0).</summary>
    public void Leave() => _room.Release();

    /// <summary>An acknowledgement was sent.</summary>
    public void Acknowledged()
    {
        lock (_counting)
        {
            _acknowledged++;
            if (_proving || _acknowledged < _provedAtOnce) return;
            _proving = true;
        }
        _ = ProveAsync();
    }

    public void Dispose() => _room.Dispose();

    private async Task ProveAsync()
    {
        try
        {
            while (Take() is > 0 and var some)
            {
                await ping();
                _room.Release(some);
            }
        }
        catch (Exception exception)
        {
            failed(exception);
        }
    }

    private int Take()
    {
        lock (_counting)
        {
            var some = _acknowledged >= _provedAtOnce ? _acknowledged : 0;
            _acknowledged -= some;
            _proving = some > 0;
            return some;
        }
    }
}
