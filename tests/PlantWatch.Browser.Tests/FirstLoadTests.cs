using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A phone on a weak signal: what has to come over the air before a pool's state is read.</summary>
public sealed class FirstLoadTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    // kB are 1000 bytes here, as on a meter of mobile data.
    private const double Most = 90_000;

    /// <summary>Scripts, styles, page and words that the browser was sent until the overview stood, as packed. What is fetched later, while nobody waits, is not counted.</summary>
    [BrowserFact]
    public async Task The_first_picture_needs_no_more_than_90_kB_of_page()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync(), 390);
        var sizes = new List<(string Path, int Bytes)>();
        var done = new List<Task>();
        screen.Page.RequestFinished += (_, request) => done.Add(NoteAsync(request, sizes));
        await screen.GoAsync();
        await Expect(screen["pool-main"]).ToBeVisibleAsync();
        await Task.WhenAll(done.ToArray());
        var page = sizes.Where(s => !s.Path.StartsWith("/api", StringComparison.Ordinal) && !s.Path.StartsWith("/live", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(page);
        Assert.True(page.Sum(s => s.Bytes) <= Most, $"{page.Sum(s => s.Bytes)} bytes:\n{string.Join('\n', page.OrderByDescending(s => s.Bytes))}");
    }

    /// <summary>The sum of layout shifts that nobody asked for, as browsers count it (Layout Instability, WICG); up to 0.1 is called good by those who defined the figure (web.dev, Cumulative Layout Shift).</summary>
    [BrowserTheory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Nothing_jumps_away_under_the_thumb_while_the_first_picture_fills(int width)
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync(), width);
        await screen.Page.AddInitScriptAsync("""
            window.shifted = 0;
            new PerformanceObserver(list => { for (const e of list.getEntries()) if (!e.hadRecentInput) window.shifted += e.value; }).observe({ type: 'layout-shift', buffered: true });
            """);
        await screen.GoAsync();
        await Expect(screen["pool-main"]).ToBeVisibleAsync();
        // Until the charts of the tiles and what is fetched while nobody waits are there, too.
        await screen.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        await screen.UntilAsync("() => [...document.querySelectorAll('.spark-box svg')].length > 0");
        Assert.InRange(await screen.AskAsync<double>("() => window.shifted"), 0, 0.1);
        screen.IsClean();
    }

    private static async Task NoteAsync(IRequest request, List<(string, int)> sizes)
    {
        var bytes = (await request.SizesAsync()).ResponseBodySize;
        lock (sizes) sizes.Add((new Uri(request.Url).AbsolutePath, bytes));
    }
}
