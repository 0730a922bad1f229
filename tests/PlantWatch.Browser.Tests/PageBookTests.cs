using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Browser.Tests;

/// <summary>docs/pages.md: a picture of every page as a phone shows it. The pictures are taken by this test; it writes them into docs when it is asked to write what is generated.</summary>
public sealed partial class PageBookTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    // Pages that are about one thing, and the thing.
    private static readonly Dictionary<string, string> About = new(StringComparer.Ordinal)
    {
        ["check"] = "check/main", ["pool"] = "pool/main", ["balance"] = "balance/main", ["what-if"] = "what-if/main", ["dose"] = "dose/main", ["plan"] = "plan/main", ["incident"] = "incident/main",
        ["probe"] = "probe/ph", ["pump"] = "pump/acid-pump", ["calibrate"] = "calibrate/ph", ["board"] = "board/operators-round", ["wall"] = "wall/wall-display", ["rules"] = "rules/R-012",
    };

    // Made out of what somebody has just done: looked at in the tests of that.
    private static readonly string[] Elsewhere = ["sheet"];

    private const string IsDrawn = """
        () => document.querySelector('main h1, main h2, main .empty, .wall') !== null && ![...document.querySelectorAll('main .hint, main [role=status], main .empty')].some(e => e.textContent.startsWith('Loading'))
        """;

    [Fact]
    public void Every_page_has_its_picture_in_the_book()
    {
        var book = Repository.ReadText("docs", "pages.md");
        Assert.All(Keys(), key =>
        {
            Assert.Contains($"screens/pages/{Name(key)}.png", book, StringComparison.Ordinal);
            Assert.True(File.Exists(Repository.PathOf("docs", "screens", "pages", Name(key) + ".png")), $"no picture of #/{key}");
        });
    }

    [BrowserFact]
    public async Task Every_page_can_be_taken_a_picture_of()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync(), 390);
        var write = Environment.GetEnvironmentVariable(Repository.WriteVariable) == "true";
        var folder = Directory.CreateDirectory(write ? Repository.PathOf("docs", "screens", "pages") : Repository.PathOf("tests", "TestResults", "pages")).FullName;
        foreach (var key in Keys())
        {
            var route = key == "alarm" ? $"alarm/{await AlarmAsync()}" : About.GetValueOrDefault(key, key);
            await screen.GoAsync(route);
            await screen.UntilAsync(IsDrawn);
            await screen.UntilAsync("() => [...document.querySelectorAll('.strip-plot')].every(p => p.querySelector('canvas'))");
            Assert.Equal((key, 0), (key, await screen.Page.GetByText("There is no such page").CountAsync()));
            var picture = await screen.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, Name(key) + ".png") });
            Assert.True(picture.Length > 4000, $"#/{route} shows next to nothing");
        }

        screen.IsClean();
    }

    private static string Name(string key) => key.Length == 0 ? "overview" : key;

    private static IEnumerable<string> Keys() =>
        Key().Matches(Repository.ReadText("src", "PlantWatch.Server", "client", "src", "nav", "pages.tsx")).Select(m => m.Groups[1].Value).Except(Elsewhere);

    private async Task<string?> AlarmAsync()
    {
        using var http = new HttpClient { BaseAddress = await plant.AddressAsync() };
        using var circuit = JsonDocument.Parse(await http.GetStringAsync("/api/v1/circuits/hall"));
        return circuit.RootElement.GetProperty("alarms")[0].GetProperty("id").GetString();
    }

    [GeneratedRegex(@"\{ key: '([^']*)'")]
    private static partial Regex Key();
}
