using System.Diagnostics;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Server.Boards;
using PlantWatch.Server.Tests.PlantFile;
using PlantWatch.Server.Tests.Telling;

namespace PlantWatch.Server.Tests.Boards;

public sealed class BoardWatcherTests : IDisposable
{
    private readonly TemporaryFolder _shipped = new(), _own = new();
    private readonly HandClock _clock = new();

    public void Dispose()
    {
        _shipped.Dispose();
        _own.Dispose();
    }

    [Fact]
    public async Task A_board_of_the_plant_stands_in_for_one_of_the_server_until_it_goes()
    {
        Save(_shipped, "round", "Round");
        await using var watcher = await Started();
        Assert.Equal(("Round", false), Shown(watcher));

        Save(_own, "round", "Our round");
        await LookAndSettle(watcher, () => Shown(watcher) == ("Our round", true));

        File.Delete(Path.Combine(_own.Root, "round.board.yaml"));
        await LookAndSettle(watcher, () => Shown(watcher) == ("Round", false));
    }

    [Fact]
    public async Task A_broken_board_keeps_its_last_good_version_and_says_what_is_wrong()
    {
        Save(_own, "round", "Our round");
        await using var watcher = await Started();

        _own.Write("round.board.yaml", [.. "title: Our round\nfor: nobody\ntiles: []\n"u8]);
        await LookAndSettle(watcher, () => watcher.Shelf.Find("round")!.Errors.Count == 2);

        Assert.Equal(("Our round", true), Shown(watcher));
        Assert.All(watcher.Shelf.Find("round")!.Errors, e => Assert.Equal("round.board.yaml", e.File));
        Assert.StartsWith("round.board.yaml, line 2, for: expected one of engineer", watcher.Shelf.Find("round")!.Errors[0].ToString(), StringComparison.Ordinal);

        Save(_own, "round", "Our round, mended");
        await LookAndSettle(watcher, () => Shown(watcher) == ("Our round, mended", true));
        Assert.Empty(watcher.Shelf.Find("round")!.Errors);
    }

    [Fact]
    public async Task A_board_that_never_was_good_leaves_the_one_of_the_server_in_sight()
    {
        Save(_shipped, "round", "Round");
        _own.Write("round.board.yaml", [.. "title: 3\n"u8]);
        _own.Write("other.board.yaml", [.. "title: 3\n"u8]);
        await using var watcher = await Started();
        Assert.Equal(("Round", true), Shown(watcher));
        Assert.NotEmpty(watcher.Shelf.Find("round")!.Errors);
        Assert.Null(watcher.Shelf.Find("other")!.Shown);
    }

    [Fact]
    public async Task A_file_whose_name_is_no_address_is_told_and_the_others_are_taken()
    {
        Save(_own, "Our Round", "Our round");
        Save(_own, "round", "Round");
        await using var watcher = await Started();
        Assert.Equal(("Round", true), Shown(watcher));
        Assert.Contains("the name of the file is no address", Assert.Single(watcher.Shelf.Find("Our Round")!.Errors).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Folders_that_are_not_there_hold_nothing_and_one_that_comes_later_is_found()
    {
        var later = Path.Combine(_own.Root, "boards");
        await using var watcher = await Started(later);
        Assert.Empty(watcher.Shelf.InOrder);

        Directory.CreateDirectory(later);
        await File.WriteAllTextAsync(Path.Combine(later, "round.board.yaml"), Yaml("Round"));
        await LookAndSettle(watcher, () => watcher.Shelf.Find("round") is not null);
        Assert.Equal(("Round", true), Shown(watcher));
    }

    [Fact]
    public async Task One_folder_that_is_both_holds_the_boards_of_the_server()
    {
        Save(_shipped, "round", "Round");
        await using var watcher = await Started(_shipped.Root);
        Assert.Equal(("Round", false), Shown(watcher));
    }

    [Fact]
    public void Boards_of_a_folder_that_cannot_be_read_stay_as_they_were_also_where_they_stand_in_for_others()
    {
        Save(_shipped, "round", "Round");
        Save(_own, "round", "Our round");
        Save(_own, "night", "Night");
        var shelf = BoardShelf.Empty.After(BoardFolder.Read(_shipped.Root), BoardFolder.Read(_own.Root));

        var unreadable = shelf.After(BoardFolder.Read(_shipped.Root), BoardFolder.Unreadable("the share is gone"));
        Assert.Equal(shelf.InOrder, unreadable.InOrder);
        Assert.Equal("Round", Assert.Single(unreadable.After(BoardFolder.Read(_shipped.Root), BoardFolder.None).InOrder).Shown!.Title);
    }

    [Fact]
    public void What_lies_beyond_the_most_boards_is_counted()
    {
        for (var i = 0; i < BoardFolder.Most + 2; i++) Save(_own, $"b{i:000}", "Round");
        var read = BoardFolder.Read(_own.Root);
        Assert.Equal((BoardFolder.Most, 2), (read.Files.Count, read.Beyond));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_read_and_one_that_holds_too_many_are_told_once()
    {
        for (var i = 0; i <= BoardFolder.Most; i++) Save(_own, $"b{i:000}", "Round");
        using var log = new KeptLog();
        using var lines = new LoggerFactory([log]);
        string? trouble = null;
        await using var watcher = new BoardWatcher(_shipped.Root, _own.Root, _clock, lines.CreateLogger<BoardWatcher>())
        {
            Listen = false, Read = folder => folder == _own.Root && trouble is { } why ? BoardFolder.Unreadable(why) : BoardFolder.Read(folder),
        };
        await watcher.StartAsync(default);
        Assert.Equal((1, 0), (log.Count(3104), log.Count(3103)));

        trouble = "the share is gone";
        Save(_shipped, "round", "Round");
        await LookAndSettle(watcher, () => Shown(watcher) == ("Round", false));
        Save(_shipped, "round", "Our round");
        await LookAndSettle(watcher, () => Shown(watcher) == ("Our round", false));
        Assert.Equal((1, 1, BoardFolder.Most + 1), (log.Count(3104), log.Count(3103), watcher.Shelf.InOrder.Count()));
    }

    private static (string?, bool) Shown(BoardWatcher watcher) => watcher.Shelf.Find("round") is { } board ? (board.Shown?.Title, board.Own) : (null, false);

    private async Task<BoardWatcher> Started(string? own = null)
    {
        var watcher = new BoardWatcher(_shipped.Root, own ?? _own.Root, _clock, NullLogger<BoardWatcher>.Instance) { Listen = false };
        await watcher.StartAsync(default);
        return watcher;
    }

    private async Task LookAndSettle(BoardWatcher watcher, Func<bool> there)
    {
        _clock.Advance(watcher.Poll);
        // A quick look may come to wait while the clock is still being moved, and have waited by then.
        await Until(() => _clock.WaitingFor(watcher.Settle) == 1 || there());
        _clock.Advance(watcher.Settle);
        await Until(there);
    }

    private static async Task Until(Func<bool> there)
    {
        for (var waited = Stopwatch.StartNew(); !there(); await Task.Delay(5)) Assert.True(waited.Elapsed < TimeSpan.FromSeconds(30), "it never came about");
    }

    private static void Save(TemporaryFolder folder, string id, string title) => folder.Write($"{id}.board.yaml", System.Text.Encoding.UTF8.GetBytes(Yaml(title)));

    private static string Yaml(string title) => $"title: {title}\nfor: operator\ntiles:\n  - show: due\n";
}
