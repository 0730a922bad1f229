using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The first page: which pool is looked at first, and that nobody overlooks it.</summary>
public sealed class OverviewTests(Chromium chromium) : IClassFixture<Chromium>
{
    // The head of a card as it is drawn: its ground, the colour of the name and of the word, and how heavy the word is.
    private const string Head = """
        id => {
          const style = selector => getComputedStyle(document.querySelector(`[data-testid=pool-${id}] ${selector}`));
          return [style('.state').backgroundColor, style('h2 a').color, style('.state-word').color, style('.state-word').fontWeight].join(' ');
        }
        """;

    private const string Order = "() => [...document.querySelectorAll('.pools > [data-state]')].map(p => p.dataset.testid + ' ' + p.dataset.state).join(', ')";

    /// <summary>White on the deep red of a stop, as in tokens.css.</summary>
    private const string Stop = "rgb(140, 13, 28) rgb(255, 255, 255) rgb(255, 255, 255) 700";

    [BrowserFact]
    public async Task A_pool_that_becomes_a_stop_goes_to_the_front_and_has_the_colours_of_one_at_once()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 60);
        await SendAsync(server, ph: 7.42);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await screen.UntilAsync("() => document.querySelectorAll('.pools > [data-state=normal]').length === 1");
        Assert.Equal("pool-main attention, pool-teaching normal", await screen.AskAsync<string>(Order));
        Assert.NotEqual(Stop, await screen.AskAsync<string>(Head, "teaching"));

        await SendAsync(server, ph: 8.6);
        await Expect(screen["pool-teaching"]).ToHaveAttributeAsync("data-state", "stop");
        Assert.StartsWith("pool-teaching stop, pool-main", await screen.AskAsync<string>(Order), StringComparison.Ordinal);
        // As it is drawn, not as a question would have it worked out anew: the picture is taken first.
        await screen.Page.ScreenshotAsync();
        Assert.Equal(Stop, await screen.AskAsync<string>(Head, "teaching"));
        screen.IsClean();
    }

    [BrowserTheory]
    [InlineData("en")]
    [InlineData("de")]
    [InlineData("fr")]
    [InlineData("es")]
    public async Task The_head_of_a_desk_has_two_rows_in_every_language_and_hides_nothing_that_is_gone_to(string language)
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 5);
        foreach (var width in (int[])[1280, 1366])
        {
            await using var screen = await chromium.OpenAsync(server.Address, width);
            await screen.Page.AddInitScriptAsync($"localStorage.setItem('plantwatch.language', '{language}')");
            await screen.Page.GotoAsync("/#/");
            await Expect(screen["pool-main"]).ToBeVisibleAsync();
            Assert.InRange(await screen.AskAsync<double>("() => document.querySelector('.head').offsetHeight"), 40, 96);
            // From the end of the page back to its top, by keys: the card that has the focus does not lie under the bars.
            await screen.Page.SetViewportSizeAsync(width, 420);
            await screen.UntilAsync("() => getComputedStyle(document.documentElement).scrollPaddingTop === document.querySelector('.top').offsetHeight + 8 + 'px'");
            await screen.AskAsync<int>("() => { scrollTo(0, 100000); [...document.querySelectorAll('main a, main button')].at(-1).focus(); return 0; }");
            for (var i = 0; i < 8; i++) await screen.Page.Keyboard.PressAsync("Shift+Tab");
            Assert.True(await screen.AskAsync<bool>("() => document.querySelector('main').contains(document.activeElement) && document.activeElement.getBoundingClientRect().top >= document.querySelector('.top').getBoundingClientRect().bottom - 1"));
        }
    }

    private static async Task SendAsync(WholeServer server, double ph)
    {
        var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, ph, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 1.1, TestMethod.Photometer)) with { PoolId = "teaching", BottomVisible = true };
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
    }
}
