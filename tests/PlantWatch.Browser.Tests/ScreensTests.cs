using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The pictures of docs/screens, taken from the demo as its user sees it.</summary>
public sealed partial class ScreensTests(Chromium chromium) : IClassFixture<Chromium>
{
    /// <summary>Set to true, it makes the test run the demo and write the pictures.</summary>
    private const string Variable = "PLANTWATCH_SCREENS";

    private const long Most = 250 * 1000;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);
    private static readonly string Folder = Repository.PathOf("docs", "screens");

    [Fact]
    public async Task The_pictures_of_the_readme_are_there_and_small_and_are_taken_anew_when_asked_for()
    {
        if (Environment.GetEnvironmentVariable(Variable) == "true") await TakeAsync();
        Assert.All((string[])["overview", "pool", "check"], name => Assert.InRange(new FileInfo(Path.Combine(Folder, name + ".png")).Length, 5_000, Most));
    }

    private async Task TakeAsync()
    {
        Directory.CreateDirectory(Folder);
        // The demo as it was built with these tests, ended by the process id it has itself.
        var built = Path.GetRelativePath(Repository.PathOf("tests", "PlantWatch.Browser.Tests"), AppContext.BaseDirectory);
        await using var demo = Peer.Start("dotnet", Repository.PathOf("simulators", "PlantWatch.Demo", built, "PlantWatch.Demo.dll"));
        using var patience = new CancellationTokenSource(Patience);
        while (!demo.Output.Contains("Live now", StringComparison.Ordinal) && !demo.HasExited) await Task.Delay(200, patience.Token);
        var address = new Uri(Address().Match(demo.Output).Value);

        await using var desk = await chromium.OpenAsync(address);
        await desk.GoAsync();
        await desk.UntilAsync("() => [...document.querySelectorAll('.spark')].every(s => s.querySelector('.spark-line')?.getAttribute('d').length > 200)");
        await ShootAsync(desk, "overview");
        await desk.GoAsync("pool/main-pool");
        await desk["range-day"].ClickAsync();
        foreach (var probe in (string[])["ph", "orp", "temperature"]) await Expect(desk[$"strip-main-{probe}"]).ToContainTextAsync("mean and spread");
        await ShootAsync(desk, "pool");

        await using var phone = await chromium.OpenAsync(address, width: 390);
        await phone.GoAsync("check/main-pool");
        await phone.TypeAsync("field-who", "R. Castellan");
        await phone.TypeAsync("field-free_chlorine", "1,42");
        await phone.TypeAsync("field-total_chlorine", "1,90");
        await phone.TypeAsync("field-ph", "7,4");
        // The results begin right under the bars that stay at the top.
        await phone.AskAsync<int>("() => { scrollTo(0, 0); scrollTo(0, document.querySelector('[data-testid=field-free_chlorine]').closest('section').getBoundingClientRect().top - document.querySelector('.top').offsetHeight - 12); return 0; }");
        await ShootAsync(phone, "check");
        await demo.StopAsync();
    }

    private static Task<byte[]> ShootAsync(Screen screen, string name) => screen.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Folder, name + ".png") });

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
