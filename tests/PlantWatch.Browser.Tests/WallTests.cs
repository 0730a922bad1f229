using System.Globalization;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A board on the wall of the plant room: read from afar, touched by nobody, and honest when nothing is heard.</summary>
public sealed class WallTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    // Height of a capital letter against the size of the type, about that of the usual screen faces.
    private const double CapitalsOfType = 0.7;

    [BrowserFact]
    public async Task It_leads_nowhere_always_has_the_alarms_and_its_figures_are_read_from_five_metres()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.GoAsync("wall/wall-display");
        await Expect(screen["pool-main"]).ToBeVisibleAsync();
        await Expect(screen["alarm-bar"]).ToBeInViewportAsync();
        await Expect(screen["wall-time"]).ToBeInViewportAsync();
        foreach (var way in (string[])["a", "nav", ".sound-button", "select"]) await Expect(screen.Page.Locator(way)).ToHaveCountAsync(0);
        await Expect(screen["wall-dead"]).ToHaveCountAsync(0);
        Assert.Equal(0, await screen.AskAsync<int>("() => document.documentElement.scrollHeight - innerHeight"));

        // ISO 9241-303 asks for letters of at least 16 minutes of arc (from memory). A screen of 43 inches is 0.535 m high.
        var share = await screen.AskAsync<double>("() => parseFloat(getComputedStyle(document.querySelector('.wall-figures .figure')).fontSize) / innerHeight");
        var arcMinutes = Math.Atan(share * CapitalsOfType * 0.535 / 5) * 180 / Math.PI * 60;
        Assert.InRange(arcMinutes, 16, 30);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Without_a_server_it_says_since_when_in_big_letters_keeps_its_last_figures_and_goes_on_by_itself()
    {
        var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await server.PublishAsync("hall/ph", "7.41");
        await screen.GoAsync("wall/wall-display");
        await Expect(screen["pool-main"]).ToContainTextAsync("7.41");
        await screen.AskAsync<int>("() => { window.neverLoadedAnew = 1; return 1; }");

        await server.StopAsync();
        await Expect(screen["wall-dead"]).ToContainTextAsync("Not live");
        await Expect(screen["wall-dead"]).ToContainTextAsync("since ");
        await Expect(screen["pool-main"]).ToContainTextAsync("7.41");
        Assert.Equal("grayscale(1)", await screen.AskAsync<string>("() => getComputedStyle(document.querySelector('.wall-view')).filter"));
        Assert.True(await screen.AskAsync<bool>("() => parseFloat(getComputedStyle(document.querySelector('.wall-dead')).fontSize) > innerHeight / 20"));

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await Expect(screen["wall-dead"]).ToHaveCountAsync(0);
        await server.PublishAsync("hall/ph", "7.36");
        await Expect(screen["pool-main"]).ToContainTextAsync("7.36");
        Assert.Equal(1, await screen.AskAsync<int>("() => window.neverLoadedAnew ?? 0"));

        // Back on a server with another client: it loads itself anew.
        await screen.Page.RouteAsync("**/", route => route.FulfillAsync(new() { ContentType = "text/html", Body = "<script type=\"module\" crossorigin src=\"/assets/index-Another.js\"></script>" }), new() { Times = 1 });
        server = await server.RestartAsync();
        await using (server)
        {
            await screen.UntilAsync("() => window.neverLoadedAnew === undefined && document.querySelector('[data-testid=pool-main]') !== null");
            screen.IsClean(expected: LiveTests.NobodyThere);
        }
    }

    [BrowserFact]
    public async Task What_does_not_fit_is_shown_in_turn_until_somebody_holds_it()
    {
        await using var server = await StartAsync("page_seconds: 5");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("wall/mine");
        await Expect(screen["wall-pages"]).ToContainTextAsync("Page 1 of");
        var count = await screen.AskAsync<int>("() => Number(/of (\\d+)/.exec(document.querySelector('[data-testid=wall-pages]').textContent)[1])");
        Assert.True(count > 1);
        await Expect(screen["wall-pages"]).ToContainTextAsync("Page 2 of");
        await screen["wall-hold"].ClickAsync();
        await Expect(screen["wall-hold"]).ToContainTextAsync("Held until");
        var held = await screen["wall-pages"].TextContentAsync();
        await screen.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(screen["wall-pages"]).Not.ToHaveTextAsync(held!);

        // Every tile has its turn, whole within the screen.
        var seen = new HashSet<string>();
        // A page that gets its values may come to hold less: once round is by what is said, twice round is enough.
        for (var i = 0; i < 2 * count && seen.Count < 4; i++)
        {
            seen.UnionWith(await screen.AskAsync<string[]>("() => [...document.querySelectorAll('.wall-slot:not(.off) .tile')].map(t => t.dataset.testid)"));
            var page = await screen["wall-pages"].TextContentAsync();
            await screen.Page.Keyboard.PressAsync("ArrowRight");
            await Expect(screen["wall-pages"]).Not.ToHaveTextAsync(page!);
        }
        Assert.Equal(["tile-0", "tile-1", "tile-2", "tile-3"], seen.Order());
        screen.IsClean();
    }

    [BrowserTheory]
    [InlineData(800)]
    [InlineData(900)]
    public async Task No_card_strip_or_line_is_cut_by_the_edge_of_a_page_nor_a_unit_by_that_of_its_card(int height)
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.Page.SetViewportSizeAsync(1280, height);
        foreach (var board in (string[])["wall-display", "live-chemistry"])
        {
            await screen.GoAsync($"wall/{board}");
            await screen.UntilAsync("() => document.querySelectorAll('.wall-slot canvas').length > 0");
            await screen.UntilAsync("() => document.querySelector('[data-testid=wall-pages]') !== null");
            var pages = await screen.AskAsync<int>("() => Number(/of (\\d+)/.exec(document.querySelector('[data-testid=wall-pages]').textContent)[1])");
            for (var i = 0; i < pages; i++)
            {
                Assert.Equal((board, i, ""), (board, i, await screen.AskAsync<string>(Cut)));
                await screen.Page.Keyboard.PressAsync("ArrowRight");
                await screen.AskAsync<int>("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(0))))");
            }
        }
        screen.IsClean();
    }

    // The first part of a tile that is seen and reaches beyond what is shown of its tile or of the page, or a figure beyond its card; nothing otherwise.
    private const string Cut = """
        () => {
          const view = document.querySelector('.wall-view').getBoundingClientRect();
          for (const slot of document.querySelectorAll('.wall-slot:not(.off)')) {
            const box = slot.getBoundingClientRect(), scale = box.width / slot.offsetWidth, inset = /inset\(([\d.]+)px 0(?:px)? ([\d.]+)px/.exec(slot.style.clipPath) ?? [0, 0, 0];
            const top = Math.max(view.top, box.top + inset[1] * scale), bottom = Math.min(view.bottom, box.bottom - inset[2] * scale);
            for (const part of slot.querySelectorAll('article, .alarm-line, .strip, .pump, .readout-one, .of-pool')) {
              const p = part.getBoundingClientRect();
              if (p.height > 1 && p.bottom > top + 2 && p.top < bottom - 2 && (p.top < top - 2 || p.bottom > bottom + 2)) return `${part.className} ${p.top}-${p.bottom} of ${top}-${bottom}`;
            }
            for (const figure of slot.querySelectorAll('.wall-figures .figure, .cell .figure')) {
              const range = document.createRange();
              range.selectNodeContents(figure);
              if (Math.max(...[...range.getClientRects()].map(r => r.right)) > figure.closest('article').getBoundingClientRect().right) return figure.textContent;
            }
          }
          return '';
        }
        """;

    [BrowserFact]
    public async Task It_is_dark_at_night_and_gives_the_light_back_to_whoever_leaves_it_by_a_key()
    {
        // Dark from an hour ago to ten hours from now, whatever the hour.
        var london = TimeZoneInfo.ConvertTime(DateTimeOffset.UtcNow, TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        var (from, until) = (london.AddHours(-1).ToString("HH:mm", CultureInfo.InvariantCulture), london.AddHours(10).ToString("HH:mm", CultureInfo.InvariantCulture));
        await using var server = await StartAsync($"dark_from: \"{from}\"\n  dark_until: \"{until}\"");
        await using var screen = await chromium.OpenAsync(server.Address);
        const string ground = "() => getComputedStyle(document.documentElement).backgroundColor";
        await screen.GoAsync("wall/mine");
        await screen.UntilAsync("() => document.documentElement.dataset.theme === 'dark'");
        var night = await screen.AskAsync<string>(ground);
        await screen.Page.Keyboard.PressAsync("Escape");
        await Expect(screen["board"]).ToHaveAttributeAsync("data-board", "mine");
        Assert.NotEqual(night, await screen.AskAsync<string>(ground));
        Assert.Equal("16px", await screen.AskAsync<string>("() => getComputedStyle(document.documentElement).fontSize"));
        await screen["to-wall"].ClickAsync();
        await Expect(screen["wall"]).ToBeVisibleAsync();
        screen.IsClean();
    }

    private static async Task<WholeServer> StartAsync(string wall)
    {
        var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 60);
        var folder = Directory.CreateDirectory(Path.Combine(server.Folder, "boards")).FullName;
        await File.WriteAllTextAsync(Path.Combine(folder, "mine.board.yaml"),
            $"title: Mine\nfor: operator\nwall:\n  {wall}\ntiles:\n  - {{ show: pools }}\n  - {{ show: strip, measurands: [ph], room: full }}\n  - {{ show: strip, measurands: [orp, temperature], room: full }}\n  - {{ show: pumps, room: full }}\n");
        await WaitForBoardAsync(server);
        return server;
    }

    // The page asks for a board once when it is opened; a wall is not opened before its board is there.
    private static async Task WaitForBoardAsync(WholeServer server)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!(await server.Http.GetAsync("/api/v1/boards/mine", patience.Token)).IsSuccessStatusCode) await Task.Delay(50, patience.Token);
    }
}
