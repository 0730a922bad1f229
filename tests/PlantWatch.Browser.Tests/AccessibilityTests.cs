using System.Text.Json;
using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Browser.Tests;

/// <summary>Every page held against WCAG 2.2 A and AA by axe-core, on a phone and on a desk, light and dark. A machine finds what can be counted: names, roles, contrast, targets, order of headings. What it cannot see is looked at by people.</summary>
public sealed class AccessibilityTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    private static readonly string[] Pages =
    [
        "", "pool/main", "pool/teaching", "probe/ph", "probe/teaching-orp", "calibrate/ph", "check/main", "round", "plant-round", "instruments", "laboratory", "reagents", "balance/main", "balance/teaching", "what-if/main", "dose/main", "plan/main", "incident/main",
        "alarms", "exceptions", "limits", "rules", "rules/R-012", "alarm-health", "what-if-limits", "telling", "pumps", "pumps/acid-pump", "pump/acid-pump", "jobs", "chemicals", "plant-file", "start", "handover", "record", "boards", "board/live-chemistry", "board/operators-round", "board/maintenance", "board/duty-manager", "board/wall-display", "board/one-pool/teaching", "board/none", "wall/wall-display", "wall/one-pool/teaching", "no-such-page",
    ];

    private const string All = """
        async () => (await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'] }))
          .violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.target.join(' ')} ${n.html.slice(0, 120)}`))
        """;

    private const string Contrast = """
        async () => (await axe.run(document, { runOnly: { type: 'rule', values: ['color-contrast'] }, resultTypes: ['violations'] }))
          .violations.flatMap(v => v.nodes.map(n => `dark, ${v.id}: ${n.target.join(' ')} ${n.any[0]?.message ?? ''}`))
        """;

    private const string Ground = "() => getComputedStyle(document.documentElement).backgroundColor";

    private const string IsDrawn = """
        () => document.querySelector('main h1, main h2, main .empty') !== null && ![...document.querySelectorAll('main .hint, main [role=status], main .empty')].some(e => e.textContent.startsWith('Loading'))
        """;

    [BrowserTheory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task No_page_has_anything_that_a_machine_can_find_against_WCAG(int width)
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync(), width);
        await screen.Page.AddInitScriptAsync(await File.ReadAllTextAsync(Repository.PathOf("src", "PlantWatch.Server", "client", "node_modules", "axe-core", "axe.min.js")));
        var (found, grounds) = (new List<string>(), new HashSet<string>());
        foreach (var route in await RoutesAsync())
        {
            await screen.GoAsync(route);
            await screen.UntilAsync(IsDrawn);
            // What is half under the bar can be scrolled to.
            await screen.AskAsync<bool>("() => { scrollTo(0, 0); return true; }");
            found.AddRange((await screen.AskAsync<string[]>(All)).Select(f => $"#/{route} {f}"));
            await screen.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
            grounds.Add(await screen.AskAsync<string>(Ground));
            found.AddRange((await screen.AskAsync<string[]>(Contrast)).Select(f => $"#/{route} {f}"));
            await screen.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Light });
            grounds.Add(await screen.AskAsync<string>(Ground));
        }

        Assert.Equal(2, grounds.Count);
        Assert.True(found.Count == 0, $"{found.Count} findings\n{string.Join('\n', found)}");
    }

    // The page of an alarm goes by its id.
    private async Task<IEnumerable<string>> RoutesAsync()
    {
        using var http = new HttpClient { BaseAddress = await plant.AddressAsync() };
        using var circuit = JsonDocument.Parse(await http.GetStringAsync("/api/v1/circuits/hall"));
        return Pages.Append("alarm/" + circuit.RootElement.GetProperty("alarms")[0].GetProperty("id").GetString());
    }
}
