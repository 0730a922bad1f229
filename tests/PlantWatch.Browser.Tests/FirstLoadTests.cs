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

    private static async Task NoteAsync(IRequest request, List<(string, int)> sizes)
    {
        var bytes = (await request.SizesAsync()).ResponseBodySize;
        lock (sizes) sizes.Add((new Uri(request.Url).AbsolutePath, bytes));
    }
}
