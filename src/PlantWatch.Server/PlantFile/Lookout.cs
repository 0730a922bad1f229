using System.Threading.Channels;

namespace PlantWatch.Server.PlantFile;

/// <summary>
/// Says when it is time to look at files again. Notifications of the file system make it quick; a slow look makes it sure, since
/// editors replace a file by renaming another over it, and network folders notify of nothing.
/// </summary>
internal sealed class Lookout(TimeProvider clock, TimeSpan poll, ILogger log) : IAsyncDisposable
{
    private readonly Channel<bool> _wake = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly CancellationTokenSource _stopping = new();
    private readonly List<FileSystemWatcher> _notifiers = [];
    private ITimer? _timer;
    private Task _loop = Task.CompletedTask;
    private bool _gone;

    /// <summary>Asks to be notified of what happens in a folder; false with the reason where the system does not.</summary>
    public IOException? Listen(string folder)
    {
        if (!Directory.Exists(folder)) return null;
        try
        {
            // The folder is watched and not the name: a rename over the file changes another name.
            var notifier = new FileSystemWatcher(folder) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size };
            _notifiers.Add(notifier);
            notifier.Changed += (_, _) => Wake();
            notifier.Created += (_, _) => Wake();
            notifier.Deleted += (_, _) => Wake();
            notifier.Renamed += (_, _) => Wake();
            notifier.EnableRaisingEvents = true;
            return null;
        }
        catch (IOException error)
        {
            return error;
        }
    }

    /// <summary>Looks whenever it is time, one look at a time, until stopped.</summary>
    public void Start(Func<CancellationToken, Task> look)
    {
        _timer = clock.CreateTimer(_ => Wake(), null, poll, poll);
        _loop = Task.Run(() => LoopAsync(look, _stopping.Token), CancellationToken.None);
    }

    /// <summary>What was found once two looks, a moment apart, have found the same: a file may be half written.</summary>
    public async Task<T> SettledAsync<T>(T found, Func<T> lookAgain, Func<T, T, bool> isSame, TimeSpan settle, CancellationToken cancellation)
    {
        while (true)
        {
            await Task.Delay(settle, clock, cancellation);
            var again = lookAgain();
            if (isSame(again, found)) return again;
            found = again;
        }
    }

    /// <summary>Ends the looking.</summary>
    public async Task StopAsync(CancellationToken cancellation)
    {
        await _stopping.CancelAsync();
        await _loop.WaitAsync(cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        // What is registered as itself and as a service of the host is disposed of twice.
        if (Interlocked.Exchange(ref _gone, true)) return;
        await StopAsync(CancellationToken.None);
        foreach (var notifier in _notifiers) notifier.Dispose();
        if (_timer is not null) await _timer.DisposeAsync();
        _stopping.Dispose();
    }

    private async Task LoopAsync(Func<CancellationToken, Task> look, CancellationToken cancellation)
    {
        try
        {
            while (await _wake.Reader.WaitToReadAsync(cancellation))
            {
                _wake.Reader.TryRead(out _);
                await GuardAsync(look, cancellation);
            }
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // The server stops; there is nothing to finish.
        }
    }

    // Whatever one look met, the next may be good again.
    private async Task GuardAsync(Func<CancellationToken, Task> look, CancellationToken cancellation)
    {
        try
        {
            await look(cancellation);
        }
        catch (Exception error) when (!cancellation.IsCancellationRequested && error is not OutOfMemoryException)
        {
            PlantFileLog.LookFailed(log, error);
        }
    }

    /// <summary>Looks now and not only when it is time.</summary>
    public void Wake() => _wake.Writer.TryWrite(true);
}
