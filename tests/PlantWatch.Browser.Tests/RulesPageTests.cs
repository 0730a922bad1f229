using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Rules;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The rules in words, and what of them is out of service.</summary>
public sealed class RulesPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task Every_rule_stands_on_its_page_and_an_alarm_leads_to_its_own()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("rules");
        await Expect(screen.Page.Locator("[data-testid^='rule-R-']")).ToHaveCountAsync(RuleBook.All.Count);
        await Expect(screen["rang-R-030"]).ToContainTextAsync("rang once in 30 days");
        await screen.TypeAsync("find-rule", "pump flow");
        await Expect(screen["rule-R-033"]).ToBeVisibleAsync();
        await Expect(screen["rule-R-001"]).ToHaveCountAsync(0);
        await screen.TypeAsync("find-rule", "xyz");
        await Expect(screen["rules"]).ToContainTextAsync("No rule has these words");

        await screen.GoAsync("alarms");
        await screen["alarm-acid-pump"].GetByText("R-030", new() { Exact = true }).ClickAsync();
        await Expect(screen["rule-R-030"]).ToContainTextAsync("A dosing pump says that it has a fault.");
        await Expect(screen["take-out-R-030"]).ToBeInViewportAsync();
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_rule_is_taken_out_of_service_by_keys_alone_is_listed_for_everybody_and_returned()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.4");
        await using var screen = await chromium.OpenAsync(server.Address, width: 390);
        await screen.GoAsync("rules/R-030");
        await screen.TabToAsync("[data-testid='take-out-R-030']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.TabToAsync("[data-testid='confirm-out']");
        await screen.Page.Keyboard.PressAsync("Enter");
        foreach (var field in (string[])["out-what-R-030", "out-why-R-030", "out-by-R-030"]) await Expect(screen[$"error-{field}"]).ToBeVisibleAsync();
        await screen["field-out-until-R-030"].FillAsync("2020-01-01T10:00");
        await screen["confirm-out"].ClickAsync();
        await Expect(screen["error-out-until-R-030"]).ToContainTextAsync("past");
        await screen["field-out-until-R-030"].FillAsync("2040-01-01T10:00");
        await screen["field-out-what-R-030"].SelectOptionAsync("acid-pump");
        await screen.TypeAsync("field-out-why-R-030", "pump is away for repair");
        await screen.TypeAsync("field-out-by-R-030", "T. Wren");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["out-acid-pump"]).ToContainTextAsync("pump is away for repair");
        await Expect(screen["out-acid-pump"]).ToContainTextAsync("until 1 Jan 2040, 10:00");

        // It faults meanwhile: nobody is called, and everybody can see why.
        await server.PublishAsync("hall/acid/state", "fault");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("1 out of service");
        await screen.GoAsync("alarms");
        await Expect(screen["alarm-acid-pump"]).ToHaveAttributeAsync("data-state", "out_of_service");
        await Expect(screen["alarm-acid-pump"]).ToContainTextAsync("out of service, by T. Wren");
        await screen["alarm-acid-pump"].GetByTestId("open-return").ClickAsync();
        await screen["confirm-return"].ClickAsync();
        await Expect(screen["alarm-acid-pump"]).ToHaveAttributeAsync("data-state", "unacknowledged");
        await screen.GoAsync("rules");
        await Expect(screen["out-of-service"]).ToContainTextAsync("Nothing is out of service");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task What_is_about_safety_offers_no_way_out()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("rules/R-001");
        await Expect(screen["rule-R-001"]).ToContainTextAsync("neither be shelved nor taken out of service");
        await Expect(screen["take-out-R-001"]).ToHaveCountAsync(0);
        screen.IsClean();
    }
}
