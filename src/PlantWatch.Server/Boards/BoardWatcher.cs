using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>Keeps the boards as their files say, without a restart. A broken file changes nothing but what is said of it.</summary>
/// <param name="shipped">Folder of the boards that come with the server.</param>
/// <param name="own">Folder of the plant's own; it need not be there.</param>
/// <param name="clock">Times the looks.</param>
/// <param name="log">Is told what came and what is wrong.</param>
internal sealed class BoardWatcher(string shipped, string own, TimeProvider clock, ILogger<BoardWatcher> log) : IHostedService, IAsyncDisposable
{
    private Lookout? _lookout;
    private (BoardFolder Shipped, BoardFolder Own) _seen = (BoardFolder.None, BoardFolder.None);
    private volatile BoardShelf _shelf = BoardShelf.Empty;

    /// <summary>How often the content is looked at without any notification.</summary>
    public TimeSpan Poll { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long the content must stay the same before it counts.</summary>
    public TimeSpan Settle { get; init; } = TimeSpan.FromMilliseconds(300);

    /// <summary>Whether the file system is asked to notify; looking goes on without.</summary>
    public bool Listen { get; init; } = true;

    /// <summary>Reads a folder.</summary>
    public Func<string?, BoardFolder> Read { get; init; } = BoardFolder.Read;

    /// <summary>The boards as they stand.</summary>
    public BoardShelf Shelf => _shelf;

    /// <summary>Raised after <see cref="Shelf"/> changed.</summary>
    public event Action? Changed;

    /// <summary>Where the server's own boards lie: beside the program.</summary>
    public static string ShippedFolder => Path.Combine(AppContext.BaseDirectory, "boards");

    /// <summary>Where the plant's boards lie: in the folder that is set, or in <c>boards</c> beside the plant file.</summary>
    public static string OwnFolder(PlantWatchOptions options) =>
        Path.GetFullPath(options.Boards ?? Path.Combine(Path.GetDirectoryName(Path.GetFullPath(options.PlantFile)) ?? "", "boards"));

    public Task StartAsync(CancellationToken cancellationToken)
    {
        _lookout = new Lookout(clock, Poll, log);
        foreach (var folder in (string[])[shipped, own])
            if (Listen && _lookout.Listen(folder) is { } deaf) BoardLog.NoNotifications(log, deaf, folder, Poll.TotalSeconds);
        Take(Look());
        _lookout.Start(LookAsync);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => _lookout?.StopAsync(cancellationToken) ?? Task.CompletedTask;

    public ValueTask DisposeAsync() => _lookout?.DisposeAsync() ?? ValueTask.CompletedTask;

    private async Task LookAsync(CancellationToken cancellation)
    {
        var found = Look();
        if (IsSame(found, _seen)) return;
        Take(await _lookout!.SettledAsync(found, Look, IsSame, Settle, cancellation));
    }

    // A plant file may lie beside the program, as that of the demonstration does: then the one folder is both.
    private (BoardFolder Shipped, BoardFolder Own) Look() => (Read(shipped), own == shipped ? BoardFolder.None : Read(own));

    private static bool IsSame((BoardFolder Shipped, BoardFolder Own) a, (BoardFolder Shipped, BoardFolder Own) b) => a.Shipped.IsSame(b.Shipped) && a.Own.IsSame(b.Own);

    private void Take((BoardFolder Shipped, BoardFolder Own) found)
    {
        if (IsSame(found, _seen)) return;
        Tell(shipped, found.Shipped, _seen.Shipped);
        Tell(own, found.Own, _seen.Own);
        var before = _shelf;
        (_seen, _shelf) = (found, before.After(found.Shipped, found.Own));
        foreach (var board in _shelf.InOrder.Where(b => !ReferenceEquals(before.Find(b.Id), b))) Tell(board);
        Changed?.Invoke();
    }

    private void Tell(string folder, BoardFolder found, BoardFolder seen)
    {
        if (found.Trouble is { } trouble && trouble != seen.Trouble) BoardLog.Unreadable(log, folder, trouble);
        if (found.Beyond > 0 && found.Beyond != seen.Beyond) BoardLog.TooMany(log, folder, BoardFolder.Most, found.Beyond);
    }

    private void Tell(BoardStanding board)
    {
        if (board.Errors.Count == 0) BoardLog.Taken(log, board.Id, board.Source.File);
        else BoardLog.Broken(log, board.Id, board.Errors.Count, board.Shown is not null);
        foreach (var error in board.Errors) BoardLog.Wrong(log, error);
    }
}
