using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.House;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Every page on a phone and on a desk, light and dark. The pictures lie in tests/TestResults/pictures for people to look at.</summary>
public sealed class AppearanceTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    // A page, and what must stand on it before it counts as drawn.
    private static readonly (string Route, string Shows)[] Pages =
    [
        ("", "pool-main"), ("pool/main", "strip-ph"), ("pool/teaching", "strip-teaching-orp"), ("probe/ph", "judgements"), ("probe/panel-ph", "calibrations"), ("probe/teaching-orp", "learned"), ("probe/water", "signal"),
        ("check/main", "submit-check"), ("round", "begin-round"), ("plant-round", "plant-round-form"), ("instruments", "verify-said"), ("balance/main", "indices-foreign"), ("balance/teaching", "balance-missing"), ("what-if/main", "curve-table"), ("alarms", "alarm-acid-pump"), ("rules", "rule-R-010"), ("rules/R-012", "take-out-R-012"), ("pumps", "job-hypo-pump"), ("pumps/acid-pump", "job-form"), ("pump/acid-pump", "pump-lacks"), ("jobs", "job-hypo-pump"), ("handover", "handover-happened"), ("chemicals", "chemical-hypo"), ("plant-file", "file-form"), ("start", "step-value"), ("paper", "paper-open"), ("inspect", "inspect-show"), ("record", "refusal-not_a_number"),
        ("boards", "board-one-pool"), ("board/live-chemistry", "strip-teaching-orp"), ("board/operators-round", "tile-6"), ("board/maintenance", "board-job-hypo-pump"), ("board/duty-manager", "pool-main"), ("board/wall-display", "strip-ph"), ("board/one-pool/teaching", "strip-teaching-orp"), ("wall/wall-display", "pool-main"),
    ];

    [BrowserTheory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task No_page_scrolls_sideways_complains_or_asks_a_stranger(int width, bool dark)
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync(), width, dark);
        var folder = Directory.CreateDirectory(Repository.PathOf("tests", "TestResults", "pictures")).FullName;
        foreach (var (route, shows) in Pages)
        {
            await screen.GoAsync(route);
            await Expect(screen[shows]).ToBeVisibleAsync();
            await screen.UntilAsync("() => [...document.querySelectorAll('.strip-plot')].every(p => p.querySelector('canvas'))");
            Assert.Equal((route, ""), (route, await screen.AskAsync<string>(TooWide)));
            Assert.Equal((route, ""), (route, await screen.AskAsync<string>(Overlapping)));
            await screen.Page.ScreenshotAsync(new PageScreenshotOptions { FullPage = true, Path = Path.Combine(folder, $"{(route.Length == 0 ? "overview" : route.Replace('/', '-'))}-{width}-{(dark ? "dark" : "light")}.png") });
        }
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Light_and_dark_are_chosen_by_hand_too_and_remembered()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.GoAsync();
        var light = await screen.AskAsync<string>(Ground);
        await screen["theme"].SelectOptionAsync("dark");
        var dark = await screen.AskAsync<string>(Ground);
        Assert.NotEqual(light, dark);
        await screen.Page.ReloadAsync();
        Assert.Equal(dark, await screen.AskAsync<string>(Ground));
        screen.IsClean();
    }

    // The first row of a pool's card whose name, value and spark do not keep apart; nothing otherwise.
    private const string Overlapping = """
        () => {
          const reach = e => {
            const range = document.createRange();
            range.selectNodeContents(e);
            const boxes = [...range.getClientRects()];
            return [Math.min(...boxes.map(b => b.left)), Math.max(...boxes.map(b => b.right))];
          };
          const row = [...document.querySelectorAll('.probe-row')].find(r => {
            const parts = [...r.children].filter(c => c.textContent || c.querySelector('svg')).map(reach);
            return parts.some((p, i) => i > 0 && p[0] < parts[i - 1][1] - 0.5);
          });
          return row ? row.textContent : '';
        }
        """;

    private const string Ground = "() => getComputedStyle(document.documentElement).backgroundColor";

    // The first thing that reaches beyond the right edge, where the page can be scrolled sideways; nothing otherwise.
    private const string TooWide = """
        () => {
          const root = document.documentElement;
          if (root.scrollWidth <= innerWidth) return '';
          const clipped = e => { for (let p = e.parentElement; p; p = p.parentElement) if (getComputedStyle(p).overflowX !== 'visible') return true; return false; };
          const out = [...document.body.querySelectorAll('*')].find(e => e.getBoundingClientRect().right > innerWidth + 1 && !clipped(e));
          return `${root.scrollWidth} px: ${out?.outerHTML.slice(0, 200)}`;
        }
        """;
}
