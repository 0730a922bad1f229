using System.Threading.Channels;
using PlantWatch.Core.Plans;
using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.PlantFile;

/// <summary>Brings the plant file into force at the start and whenever it changes. A broken file changes nothing but <see cref="Errors"/>: the old one stays in force.</summary>
/// <remarks>
/// Notifications of the file system make it quick; a slow look at the content makes it sure, since editors replace a file by renaming
/// another over it, and network folders notify of nothing. A change counts once two looks, a moment apart, have found the same bytes.
/// </remarks>
internal sealed class PlantFileWatcher(string path, Func<PlantPlan, CancellationToken, Task> bringIntoForce, TimeProvider clock, ILogger<PlantFileWatcher> log)
    : IHostedService, IAsyncDisposable
{
    private readonly Channel<bool> _wake = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly CancellationTokenSource _stopping = new();
    private readonly string _path = Path.GetFullPath(path);
    private volatile Standing _standing = new([], null);
    private PlantFileSource? _seen;
    private readonly List<FileSystemWatcher> _notifiers = [];
    private ITimer? _timer;
    private Task _loop = Task.CompletedTask;

    /// <summary>How often the content is looked at without any notification.</summary>
    public TimeSpan Poll { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long the content must stay the same before it counts.</summary>
    public TimeSpan Settle { get; init; } = TimeSpan.FromMilliseconds(300);

    /// <summary>Whether the file system is asked to notify; looking goes on without.</summary>
    public bool Listen { get; init; } = true;

    /// <summary>What is wrong with the file as it lies there now; empty when it is the one in force.</summary>
    public IReadOnlyList<PlantFileError> Errors => _standing.Errors;

    /// <summary>SHA-256 of the file in force, lower-case hexadecimal; null before the first good one.</summary>
    public string? InForceHash => _standing.InForceHash;

    /// <summary>The limit packs that can be picked: those that come with the server, and the plant's own of the file in force.</summary>
    public PackShelf Packs { get; private set; } = PackShelf.Shipped;

    /// <summary>Raised after <see cref="Errors"/> or <see cref="InForceHash"/> changed.</summary>
    public event Action? Changed;

    /// <summary>Reads the file and, when it is good, returns with it in force. A broken one does not keep the server from starting.</summary>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        if (Path.GetDirectoryName(_path) is { } folder) StartNotifier(folder);
        StartNotifier(PlantFileSource.PacksBeside(_path));
        await ActAsync(PlantFileSource.Read(_path), cancellationToken);
        _timer = clock.CreateTimer(_ => Wake(), null, Poll, Poll);
        _loop = Task.Run(() => LoopAsync(_stopping.Token), CancellationToken.None);
    }

    /// <summary>Ends the looking; what is in force stays.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        await _stopping.CancelAsync();
        await _loop.WaitAsync(cancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync(CancellationToken.None);
        foreach (var notifier in _notifiers) notifier.Dispose();
        if (_timer is not null) await _timer.DisposeAsync();
        _stopping.Dispose();
    }

    private async Task LoopAsync(CancellationToken cancellation)
    {
        try
        {
            while (await _wake.Reader.WaitToReadAsync(cancellation))
            {
                _wake.Reader.TryRead(out _);
                var found = PlantFileSource.Read(_path);
                if (found.IsSame(_seen)) continue;
                await ActAsync(await SettledAsync(found, cancellation), cancellation);
            }
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // The server stops; there is nothing to finish.
        }
    }

    private async Task<PlantFileSource> SettledAsync(PlantFileSource found, CancellationToken cancellation)
    {
        while (true)
        {
            await Task.Delay(Settle, clock, cancellation);
            var again = PlantFileSource.Read(_path);
            if (again.IsSame(found)) return again;
            found = again;
        }
    }

    private async Task ActAsync(PlantFileSource found, CancellationToken cancellation)
    {
        if (found.IsSame(_seen)) return;
        _seen = found;
        if (found.Hash is not null && found.Hash == _standing.InForceHash)
        {
            // Back to what is in force: a slip was undone.
            Publish(new([], _standing.InForceHash));
            return;
        }

        var result = found.Understand();
        if (result.Plan is { } plan) await BringIntoForceAsync(plan, result.Packs, found.Hash!, cancellation);
        else Refuse(result.Errors);
    }

    private async Task BringIntoForceAsync(PlantPlan plan, PackShelf packs, string hash, CancellationToken cancellation)
    {
        try
        {
            await bringIntoForce(plan, cancellation);
        }
        catch (PlanRefusedException refused)
        {
            // What stands in its way may be seen to at any time.
            _seen = null;
            Stay(new(1, "circuits", refused.Message));
            return;
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            PlantFileLog.NotTaken(log, error, _path);
            _seen = null;
            Publish(_standing with { Errors = [new(1, "", "the file is good, but it could not be brought into force; it is tried again")] });
            return;
        }

        Packs = packs;
        PlantFileLog.InForce(log, _path, hash[..12]);
        Publish(new([], hash));
    }

    // It is looked at again and again, and said once.
    private void Stay(PlantFileError error)
    {
        if (!_standing.Errors.SequenceEqual([error])) Refuse([error]);
    }

    private void Refuse(IReadOnlyList<PlantFileError> errors)
    {
        if (_standing.InForceHash is null) PlantFileLog.NoneInForce(log, _path, errors.Count);
        else PlantFileLog.OldStays(log, _path, errors.Count);
        foreach (var error in errors) PlantFileLog.Wrong(log, error);
        Publish(_standing with { Errors = errors });
    }

    private void Publish(Standing next)
    {
        _standing = next;
        foreach (var listener in Changed?.GetInvocationList().Cast<Action>() ?? [])
        {
            try
            {
                listener();
            }
#pragma warning disable CA1031 // One listener's trouble stays its own.
            catch (Exception error)
#pragma warning restore CA1031
            {
                PlantFileLog.ListenerFailed(log, error);
            }
        }
    }

    private void StartNotifier(string folder)
    {
        if (!Listen || !Directory.Exists(folder)) return;
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
        }
        catch (IOException error)
        {
            PlantFileLog.NoNotifications(log, error, _path, Poll.TotalSeconds);
        }
    }

    private void Wake() => _wake.Writer.TryWrite(true);

    private sealed record Standing(IReadOnlyList<PlantFileError> Errors, string? InForceHash);
}
