using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The page of one alarm, and several acknowledged at once.</summary>
public sealed class AlarmPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserTheory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task An_alarm_has_a_page_with_its_rule_its_curve_its_cause_and_its_history(int width)
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.9");
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 8.4, TestMethod.Photometer)))).IsSuccessStatusCode);
        await using var screen = await chromium.OpenAsync(server.Address, width);
        await screen.GoAsync("alarms");
        await screen.Page.GetByRole(AriaRole.Link, new() { Name = "A test is outside a stop that always holds", Exact = true }).First.ClickAsync();
        var alarm = screen["alarm-main/ph"];
        await Expect(alarm).ToHaveAttributeAsync("data-rule", "R-013");
        await Expect(screen["alarm-rule"]).ToContainTextAsync("R-013");
        await Expect(screen["alarm-consequences"]).ToContainTextAsync("A test is outside the pool's limit");
        await Expect(screen["strip-ph"]).ToContainTextAsync("8.20");
        await screen.UntilAsync("() => [...document.querySelectorAll('.strip-plot')].every(p => p.querySelector('canvas'))");
        Assert.True(await screen.AskAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));

        await alarm.GetByTestId("ack").ClickAsync();
        await alarm.GetByLabel("Your name").FillAsync("T. Wren");
        await alarm.GetByLabel("Comment").FillAsync("bathers are out");
        await alarm.GetByTestId("confirm-ack").ClickAsync();
        await Expect(screen["alarm-history"]).ToContainTextAsync("Acknowledged \u2013 T. Wren: bathers are out");
        await screen["alarm-consequences"].GetByRole(AriaRole.Link).First.ClickAsync();
        await Expect(alarm).ToHaveAttributeAsync("data-rule", "R-012");
        await Expect(screen["alarm-cause"]).ToContainTextAsync("A test is outside a stop that always holds");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task An_alarm_that_is_over_keeps_its_page_and_one_that_never_was_says_so()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await screen["alarm-bar"].ClickAsync();
        var alarm = screen["alarm-acid-pump"];
        await alarm.GetByTestId("ack").ClickAsync();
        await alarm.GetByLabel("Your name").FillAsync("T. Wren");
        await alarm.GetByTestId("confirm-ack").ClickAsync();
        await server.PublishAsync("hall/acid/state", "running");
        await Expect(screen["alarm-over"]).ToBeVisibleAsync();
        await Expect(screen["alarm-history"]).ToContainTextAsync("Cleared");
        await Expect(alarm.GetByTestId("ack")).ToHaveCountAsync(0);
        await screen.GoAsync("alarm/0197a000-0000-7000-8000-000000000001");
        await Expect(screen.Page.Locator("main")).ToContainTextAsync("There is no such alarm");
        screen.IsClean(c => c.Contains("404", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task Several_are_acknowledged_with_one_comment_by_keys_alone_and_what_is_critical_is_not_among_them()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await server.PublishAsync("hall/hypo/state", "fault");
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 8.4, TestMethod.Photometer)))).IsSuccessStatusCode);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("alarms");
        await screen.TabToAsync("[data-testid='open-several']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["several"].GetByRole(AriaRole.Checkbox)).ToHaveCountAsync(3);
        await screen.TabToAsync("[data-testid='choose-main/ph']");
        await screen.Page.Keyboard.PressAsync("Space");
        await Expect(screen["confirm-several"]).ToHaveTextAsync("Acknowledge 2");
        await screen.TabToAsync("[data-testid='confirm-several']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["error-several-comment"]).ToBeVisibleAsync();
        await screen.TabToAsync("[data-testid='field-several-comment']");
        await screen.Page.Keyboard.TypeAsync("both pumps stopped for the tank");
        await screen.TabToAsync("[data-testid='field-several-by']");
        await screen.Page.Keyboard.TypeAsync("T. Wren");
        await screen.Page.Keyboard.PressAsync("Enter");
        foreach (var pump in (string[])["acid-pump", "hypo-pump"])
        {
            await Expect(screen[$"alarm-{pump}"]).ToHaveAttributeAsync("data-state", "acknowledged");
            await Expect(screen[$"alarm-{pump}"]).ToContainTextAsync("both pumps stopped for the tank");
        }
        await Expect(screen.Page.Locator("[data-rule='R-014']")).ToHaveAttributeAsync("data-state", "unacknowledged");
        await Expect(screen.Page.Locator("[data-rule='R-013']")).ToHaveAttributeAsync("data-state", "unacknowledged");
        screen.IsClean();
    }
}
