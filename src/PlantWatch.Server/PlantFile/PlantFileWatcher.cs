using PlantWatch.Core.Plans;
using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile.Editing;

namespace PlantWatch.Server.PlantFile;

/// <summary>Brings the plant file into force at the start and whenever it changes. A broken file changes nothing but <see cref="Errors"/>: the old one stays in force.</summary>
/// <remarks>
/// A change counts once two looks, a moment apart, have found the same bytes.
/// </remarks>
internal sealed class PlantFileWatcher(string path, Func<PlantPlan, CancellationToken, Task> bringIntoForce, TimeProvider clock, ILogger<PlantFileWatcher> log)
    : IHostedService, IAsyncDisposable
{
    private readonly string _path = Path.GetFullPath(path);
    private volatile Standing _standing = new([], null, null);
    private volatile PlantFileSource? _seen;
    private ExpectedFile? _expected;
    private Lookout? _lookout;

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

    /// <summary>There is no file at all, and there never was a good one: an empty plant, and nothing that went wrong.</summary>
    public bool IsMissing => _standing.InForceHash is null && !File.Exists(_path);

    /// <summary>Who saved the file that is being brought into force, where it was saved on the page; null when it was edited elsewhere.</summary>
    public PlanSigned? Signed { get; private set; }

    /// <summary>Raised after <see cref="Errors"/> or <see cref="InForceHash"/> changed.</summary>
    public event Action? Changed;

    /// <summary>Reads the file and, when it is good, returns with it in force. A broken one does not keep the server from starting.</summary>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        _lookout = new Lookout(clock, Poll, log);
        if (Path.GetDirectoryName(_path) is { } folder) ListenTo(folder);
        ListenTo(PlantFileSource.PacksBeside(_path));
        await ActAsync(PlantFileSource.Read(_path), cancellationToken);
        _lookout.Start(LookAsync);
    }

    /// <summary>Ends the looking; what is in force stays.</summary>
    public Task StopAsync(CancellationToken cancellationToken) => _lookout?.StopAsync(cancellationToken) ?? Task.CompletedTask;

    public ValueTask DisposeAsync() => _lookout?.DisposeAsync() ?? ValueTask.CompletedTask;

    /// <summary>Tells who writes the version that will be found next.</summary>
    public void Expect(string hash, PlanSigned signed) => Volatile.Write(ref _expected, new(hash, signed));

    /// <summary>Looks at once, and returns when this version is in force or was found broken or refused, or after a while in any case.</summary>
    public async Task TakenAsync(string hash, TimeSpan patience, CancellationToken cancellation)
    {
        var taken = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Look()
        {
            var standing = _standing;
            if (standing.InForceHash == hash || (standing.Errors.Count > 0 && standing.LookedAtHash == hash)) taken.TrySetResult();
        }

        Changed += Look;
        try
        {
            _lookout?.Wake();
            Look();
            await taken.Task.WaitAsync(patience, clock, cancellation);
        }
        catch (TimeoutException)
        {
            // It is on the disk all the same, and comes into force when it can.
        }
        finally
        {
            Changed -= Look;
        }
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        var found = PlantFileSource.Read(_path);
        if (found.IsSame(_seen)) return;
        await ActAsync(await _lookout!.SettledAsync(found, () => PlantFileSource.Read(_path), (a, b) => a.IsSame(b), Settle, cancellation), cancellation);
    }

    private async Task ActAsync(PlantFileSource found, CancellationToken cancellation)
    {
        if (found.IsSame(_seen)) return;
        _seen = found;
        if (found.Hash is not null && found.Hash == _standing.InForceHash)
        {
            // Back to what is in force: a slip was undone.
            Fulfil(found.Hash);
            Publish(new([], found.Hash, found.Hash));
            return;
        }

        var result = found.Understand();
        if (result.Plan is { } plan) await BringIntoForceAsync(plan, result.Packs, found.Hash!, cancellation);
        else Refuse(result.Errors, found.Hash);
    }

    private async Task BringIntoForceAsync(PlantPlan plan, PackShelf packs, string hash, CancellationToken cancellation)
    {
        try
        {
            Signed = Volatile.Read(ref _expected) is { } expected && expected.Hash == hash ? expected.Signed : null;
            await bringIntoForce(plan, cancellation);
        }
        catch (PlanRefusedException refused)
        {
            // What stands in its way may be seen to at any time.
            _seen = null;
            Stay(new(1, "circuits", refused.Message), hash);
            return;
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            PlantFileLog.NotTaken(log, error, _path);
            _seen = null;
            Publish(_standing with { Errors = [new(1, "", "the file is good, but it could not be brought into force; it is tried again")], LookedAtHash = hash });
            return;
        }

        Packs = packs;
        Fulfil(hash);
        PlantFileLog.InForce(log, _path, hash[..12]);
        Publish(new([], hash, hash));
    }

    // It is looked at again and again, and said once.
    private void Stay(PlantFileError error, string hash)
    {
        if (!_standing.Errors.SequenceEqual([error])) Refuse([error], hash);
        else if (_standing.LookedAtHash != hash) Publish(_standing with { LookedAtHash = hash });
    }

    // The same bytes found again one day are somebody else's doing.
    private void Fulfil(string hash)
    {
        if (Volatile.Read(ref _expected) is { } expected && expected.Hash == hash) Interlocked.CompareExchange(ref _expected, null, expected);
    }

    private void Refuse(IReadOnlyList<PlantFileError> errors, string? hash)
    {
        Say(errors);
        Publish(_standing with { Errors = errors, LookedAtHash = hash });
    }

    private void Say(IReadOnlyList<PlantFileError> errors)
    {
        if (IsMissing)
        {
            PlantFileLog.NoneYet(log, _path);
            return;
        }

        if (_standing.InForceHash is null) PlantFileLog.NoneInForce(log, _path, errors.Count);
        else PlantFileLog.OldStays(log, _path, errors.Count);
        foreach (var error in errors) PlantFileLog.Wrong(log, error);
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

    private void ListenTo(string folder)
    {
        if (Listen && _lookout!.Listen(folder) is { } deaf) PlantFileLog.NoNotifications(log, deaf, _path, Poll.TotalSeconds);
    }

    private sealed record ExpectedFile(string Hash, PlanSigned Signed);

    // The errors are those of what was looked at last.
    private sealed record Standing(IReadOnlyList<PlantFileError> Errors, string? InForceHash, string? LookedAtHash);
}
