using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The one line that is always in sight.</summary>
public sealed class AlarmBarTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserTheory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task The_gravest_that_calls_is_named_on_one_line_and_what_follows_from_it_is_not_counted(int width)
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        // A test beyond the stop is beyond the limit too, which follows from it; and it is so unlikely that it is to be repeated.
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 8.4, TestMethod.Photometer)))).IsSuccessStatusCode);
        await using var screen = await chromium.OpenAsync(server.Address, width);
        await screen.GoAsync("record");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("A test is outside a stop");
        await Expect(screen["alarm-bar"]).ToHaveAttributeAsync("data-calls", "true");
        await Expect(screen["bar-state"]).ToHaveTextAsync("new");
        Assert.Equal(["R-012", "R-013", "R-014", "R-030"], (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Select(a => a.Rule).Order(StringComparer.Ordinal));
        Assert.Equal("1 critical 1 high 1 medium", await screen.AskAsync<string>("() => [...document.querySelectorAll('.counts .mark')].map(m => m.textContent.trim()).join(' ')"));
        Assert.InRange(await screen.AskAsync<double>("() => document.querySelector('.bar-line').getBoundingClientRect().height"), 44, 50);
        Assert.StartsWith("Record \u00b7 (3) ", await screen.Page.TitleAsync(), StringComparison.Ordinal);
        await screen["alarm-bar"].ClickAsync();
        await Expect(screen["alarm-main/ph"]).ToHaveAttributeAsync("data-rule", "R-013");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_dead_connection_is_said_on_the_bar_which_never_looks_normal_then()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.4");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await Expect(screen["alarm-bar"]).ToContainTextAsync("No alarm");
        await Expect(screen["bar-dead"]).ToHaveCountAsync(0);
        // As when the cable is pulled: nothing new gets through.
        await screen.Page.Context.SetOfflineAsync(true);
        await screen.AskAsync<int>("() => { dispatchEvent(new Event('offline')); return 0; }");
        await Expect(screen["bar-dead"]).ToHaveTextAsync("Not live");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("when last heard");
        Assert.StartsWith("Pools \u00b7 Not live", await screen.Page.TitleAsync(), StringComparison.Ordinal);
        await screen.Page.Context.SetOfflineAsync(false);
        await Expect(screen["bar-dead"]).ToHaveCountAsync(0);
    }
}
