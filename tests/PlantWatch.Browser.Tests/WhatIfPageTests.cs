using System.Globalization;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Trying a change: by slider, by number, by keys; with wrong input and without a connection.</summary>
public sealed class WhatIfPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_slider_moved_by_keys_changes_pH_chlorine_and_index_beside_the_present_ones()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("what-if/main");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        var (index, hocl) = (await FigureAsync(screen, "then-saturationIndex"), await FigureAsync(screen, "then-hypochlorousAcid"));
        await screen["slider-ph"].FocusAsync();
        for (var i = 0; i < 30; i++) await screen.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(screen["field-ph"]).ToHaveValueAsync("7.70");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.70");
        await Expect(screen["now-ph"]).ToHaveTextAsync("7.40");
        Assert.True(await FigureAsync(screen, "then-saturationIndex") > index + 0.2);
        Assert.True(await FigureAsync(screen, "then-hypochlorousAcid") < hocl);
        await Expect(screen["started"]).ToContainTextAsync("Started from the water of");

        await screen["reset"].ClickAsync();
        await Expect(screen["field-ph"]).ToHaveValueAsync("7.40");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        // Stabiliser holds most of the chlorine back, and the little that is left is told apart from none.
        await screen["field-cyanuricAcid"].FillAsync("40");
        await Expect(screen["row-cyanurate"]).ToContainTextAsync("40");
        Assert.InRange(await FigureAsync(screen, "then-hypochlorousAcid"), 0.005, hocl / 10);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_dose_of_acid_lowers_pH_and_its_curve_stands_in_figures_too()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("what-if/main");
        await Expect(phone["then-ph"]).ToHaveTextAsync("7.40");
        await phone["add-product"].SelectOptionAsync("acid");
        await phone["field-dose-acid"].FillAsync("20,5");
        await Expect(phone["then-ph"]).Not.ToHaveTextAsync("7.40");
        Assert.InRange(await FigureAsync(phone, "then-ph"), 6.8, 7.35);
        Assert.True(await FigureAsync(phone, "then-totalAlkalinity") < 120);
        // 460 m3 of pool and 25 m3 of balance tank are one water.
        await Expect(phone["field-volume"]).ToHaveAttributeAsync("placeholder", "485.0");
        await phone["curve-against"].SelectOptionAsync("acid");
        await Expect(phone["curve-table"]).ToContainTextAsync("kg");
        await Expect(phone["curve-table"].Locator("tbody tr")).ToHaveCountAsync(3);
        Assert.Equal("", await phone.AskAsync<string>(TooWide));
        await phone["remove-acid"].ClickAsync();
        await Expect(phone["then-ph"]).ToHaveTextAsync("7.40");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task What_cannot_be_is_refused_beside_its_field_and_the_last_possible_figures_stay()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("what-if/main");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        await screen["field-totalAlkalinity"].FillAsync("many");
        await Expect(screen["error-totalAlkalinity"]).ToContainTextAsync("Not a number");
        await screen["field-totalAlkalinity"].FillAsync("9000");
        await Expect(screen["error-totalAlkalinity"]).ToContainTextAsync("2000");
        await Expect(screen["field-totalAlkalinity"]).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(screen["what-if-stale"]).ToBeVisibleAsync();
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        await screen["field-totalAlkalinity"].FillAsync("150");
        await Expect(screen["error-totalAlkalinity"]).ToHaveCountAsync(0);
        await Expect(screen["then-totalAlkalinity"]).ToHaveTextAsync("150");
        await screen.TypeAsync("field-calciumHardness", "");
        await Expect(screen["what-if-remarks"]).ToContainTextAsync("calcium hardness");
        await Expect(screen["then-saturationIndex"]).ToHaveTextAsync("\u2013");
        screen.IsClean(expected: c => c.Contains("400", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task Without_a_live_connection_it_works_as_long_as_the_server_answers()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.Page.RouteAsync("**/live/**", route => route.AbortAsync());
        await screen.Page.GotoAsync("/#/what-if/main");
        await Expect(screen["not-live"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-ph", "7,1");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.10");
        await Expect(screen["now-ph"]).ToHaveTextAsync("7.40");
        screen.IsClean(expected: c => c.Contains("ERR_FAILED", StringComparison.Ordinal) || LiveTests.NobodyThere(c));
    }

    [BrowserFact]
    public async Task A_server_that_is_gone_is_said_and_what_was_set_is_worked_out_when_it_is_back()
    {
        var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("what-if/main");
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        await server.StopAsync();
        await screen.TypeAsync("field-ph", "7,1");
        await Expect(screen["what-if-unreachable"]).ToBeVisibleAsync();
        await Expect(screen["then-ph"]).ToHaveTextAsync("7.40");
        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(screen["what-if-unreachable"]).ToHaveCountAsync(0);
            await Expect(screen["then-ph"]).ToHaveTextAsync("7.10");
            screen.IsClean(expected: LiveTests.NobodyThere);
        }
    }

    [BrowserFact]
    public async Task Every_control_has_a_name_and_the_links_of_the_pool_are_large_enough_for_a_thumb()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        foreach (var page in (string[])["balance", "what-if", "dose", "plan", "incident"])
        {
            await phone.GoAsync($"{page}/main");
            await Expect(phone[$"water-{page}"]).ToHaveAttributeAsync("aria-current", "page");
            if (page == "what-if") await Expect(phone["curve-table"]).ToBeVisibleAsync();
            Assert.Equal((page, ""), (page, await phone.AskAsync<string>(Nameless)));
            Assert.Equal((page, ""), (page, await phone.AskAsync<string>(TooWide)));
        }

        Assert.True(await phone.AskAsync<bool>("() => [...document.querySelectorAll('.water-nav a')].every(a => a.offsetHeight >= 44 && a.offsetWidth >= 44)"));
        phone.IsClean();
    }

    private const string TooWide = "() => document.documentElement.scrollWidth > innerWidth ? `${document.documentElement.scrollWidth} px` : ''";

    // The first control without a name, figure without a label or heading that skips a level.
    private const string Nameless = """
        () => {
          const bare = [...document.querySelectorAll('main input, main select, main textarea')].find(e => !e.labels?.length && !e.getAttribute('aria-label'));
          const mute = [...document.querySelectorAll('main button, main a')].find(e => !(e.textContent.trim() || e.getAttribute('aria-label')));
          const picture = [...document.querySelectorAll('main svg[role=img], main figure')].find(e => !e.getAttribute('aria-label') && !e.querySelector('figcaption, [aria-label]'));
          const levels = [...document.querySelectorAll('main h1, main h2, main h3, main h4')].map(h => Number(h.tagName[1]));
          if (levels.some((l, i) => l > (levels[i - 1] ?? 0) + 1)) return `headings ${levels}`;
          return (bare ?? mute ?? picture)?.outerHTML.slice(0, 200) ?? '';
        }
        """;

    private static async Task<double> FigureAsync(Screen screen, string testId) =>
        double.Parse((await screen[testId].InnerTextAsync()).Replace('\u2212', '-'), CultureInfo.InvariantCulture);
}
