using System.Net;
using System.Threading.Channels;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Boards;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Boards by the interface and the hub of the whole server, with files that change under it.</summary>
public sealed class BoardTests
{
    [Fact]
    public async Task The_boards_that_ship_are_there_and_an_unknown_one_is_not()
    {
        await using var server = await WholeServer.StartAsync();
        var line = (await server.GetAsync<List<BoardLine>>("/api/v1/boards")).Single(b => b.Id == "live-chemistry");
        Assert.Equal((BoardReader.Engineer, false, 0), (line.For!.Value, line.Own, line.Problems));
        var board = await server.GetAsync<BoardView>("/api/v1/boards/live-chemistry");
        Assert.Equal(line.Version, board.Version);
        Assert.Contains(board.Tiles, t => t.Show == TileKind.Strip);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/boards/nobody")).StatusCode);
    }

    [Fact]
    public async Task A_page_hears_of_a_board_that_comes_breaks_and_is_mended()
    {
        await using var server = await WholeServer.StartAsync();
        await using var page = await Page.OpenAsync(server);
        Directory.CreateDirectory(Path.Combine(server.Folder, "boards"));

        await SaveAsync(server.Folder, "strip", "of: [ph, hp]");
        var came = await page.UntilAsync(b => b.Problems == 1);
        Assert.Equal(("Mine", true), (came.Title, came.Own));
        Assert.Equal(["the plant file has no probe 'hp'; did you mean 'ph'?"], (await MineAsync(server)).Tiles[0].Problems);

        await SaveAsync(server.Folder, "strap", "of: [ph]");
        Assert.NotEqual(came.Version, (await page.UntilAsync(b => b.Problems == 2)).Version);
        var broken = await MineAsync(server);
        Assert.Equal(("mine.board.yaml", 4, "tiles[0].show"), broken.Errors.Select(e => (e.File, e.Line, e.Key)).Single());
        Assert.Equal(["ph", "hp"], broken.Tiles.Single().Of);

        await SaveAsync(server.Folder, "strip", "of: [ph]");
        await page.UntilAsync(b => b.Problems == 0);
        Assert.Empty((await MineAsync(server)).Errors);
    }

    [Fact]
    public async Task A_plant_that_changes_under_a_board_changes_what_is_said_of_it()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-boards-").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "boards"));
        await SaveAsync(folder, "strip", "of: [ph]");
        await using var server = await WholeServer.StartAsync(folder);
        await using var page = await Page.OpenAsync(server);
        await page.UntilAsync(b => b.Problems == 0);

        var plant = Path.Combine(folder, "plant.yaml");
        await File.WriteAllTextAsync(plant, (await File.ReadAllTextAsync(plant)).Replace("- id: ph\n", "- id: water-ph\n        was: ph\n", StringComparison.Ordinal));
        await page.UntilAsync(b => b.Problems == 1);
        Assert.Contains("no probe 'ph'", Assert.Single((await MineAsync(server)).Tiles[0].Problems), StringComparison.Ordinal);
    }

    private static Task<BoardView> MineAsync(WholeServer server) => server.GetAsync<BoardView>("/api/v1/boards/mine");

    private static Task SaveAsync(string folder, string show, string of) =>
        File.WriteAllTextAsync(Path.Combine(folder, "boards", "mine.board.yaml"), $"title: Mine\nfor: operator\ntiles:\n  - show: {show}\n    {of}\n");

    /// <summary>A browser's connection that hears which boards there are.</summary>
    private sealed class Page : IAsyncDisposable
    {
        private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
        private readonly Channel<List<BoardLine>> _heard = Channel.CreateUnbounded<List<BoardLine>>();
        private readonly HubConnection _hub;

        private Page(WholeServer server)
        {
            _hub = new HubConnectionBuilder().WithUrl(new Uri(server.Address, "/live")).AddJsonProtocol(o => o.PayloadSerializerOptions = PlantJson.Options).Build();
            _hub.On<List<BoardLine>>("boards", lines => _heard.Writer.TryWrite(lines));
        }

        public static async Task<Page> OpenAsync(WholeServer server)
        {
            var page = new Page(server);
            await page._hub.StartAsync();
            return page;
        }

        public async Task<BoardLine> UntilAsync(Func<BoardLine, bool> wanted)
        {
            using var patience = new CancellationTokenSource(Patience);
            while (true)
                if ((await _heard.Reader.ReadAsync(patience.Token)).Find(b => b.Id == "mine") is { } mine && wanted(mine)) return mine;
        }

        public ValueTask DisposeAsync() => _hub.DisposeAsync();
    }
}
