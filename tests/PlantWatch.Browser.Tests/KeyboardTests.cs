using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Everything that must be done in a hurry is done without a mouse.</summary>
public sealed class KeyboardTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_first_key_skips_to_the_content_and_a_pool_is_opened_from_there()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await screen.Page.Keyboard.PressAsync("Tab");
        var skip = screen.Page.GetByRole(AriaRole.Button, new() { Name = "Skip to content" });
        await Expect(skip).ToBeFocusedAsync();
        await Expect(skip).ToBeInViewportAsync();
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen.Page.Locator("main")).ToBeFocusedAsync();

        await screen.TabToAsync("a[href='#/pool/main']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["strips"]).ToBeVisibleAsync();
        // A new page begins at its top for the keyboard too, and Back is Back.
        await Expect(screen.Page.Locator("main")).ToBeFocusedAsync();
        await screen.Page.GoBackAsync();
        await Expect(screen["pool-teaching"]).ToBeVisibleAsync();
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Whoever_leaves_the_wall_by_its_key_stands_at_the_top_of_the_board()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("wall/wall-display");
        await screen.Page.Keyboard.PressAsync("Escape");
        await Expect(screen["board"]).ToBeVisibleAsync();
        await Expect(screen.Page.Locator("main")).ToBeFocusedAsync();
        screen.IsClean();
    }

    [BrowserFact]
    public async Task An_alarm_is_acknowledged_by_keys_alone()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await screen.TabToAsync("[data-testid='alarm-bar']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["alarm-acid-pump"]).ToBeVisibleAsync();
        await screen.TabToAsync("[data-testid='ack']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.TabToAsync("[data-testid='alarm-acid-pump'] input[autocomplete='name']");
        await screen.Page.Keyboard.TypeAsync("T. Wren");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["alarm-acid-pump"]).ToHaveAttributeAsync("data-state", "acknowledged");
        screen.IsClean();
    }
}
