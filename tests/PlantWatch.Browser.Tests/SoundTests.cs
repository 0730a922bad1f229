using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Alarms are heard in the browser, once a person has allowed it, and are always shown as well.</summary>
public sealed class SoundTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task Sound_is_off_until_it_is_turned_on_then_an_alarm_is_heard_silenced_and_still_waits_to_be_acknowledged()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await Expect(screen["sound"]).ToHaveAccessibleNameAsync("Sound off, turn on");
        await screen["sound"].ClickAsync();
        await Expect(screen["silence"]).ToHaveAttributeAsync("data-sounding", "high");
        await screen["silence"].ClickAsync();
        await Expect(screen["sound"]).ToHaveAttributeAsync("data-state", "on");
        await Expect(screen["alarm-bar"]).ToHaveAttributeAsync("data-calls", "true");
        await Expect(screen["bar-state"]).ToHaveTextAsync("new");

        // Another alarm is another call, and the first one stays silenced.
        await server.PublishAsync("hall/hypo/state", "fault");
        await Expect(screen["silence"]).ToBeVisibleAsync();
        await screen.GoAsync("alarms");
        await Expect(screen["alarm-acid-pump"].GetByTestId("silence-one")).ToHaveCountAsync(0);
        await screen["alarm-hypo-pump"].GetByTestId("silence-one").ClickAsync();
        await Expect(screen["sound"]).ToHaveAttributeAsync("data-state", "on");
        await Expect(screen["alarm-hypo-pump"]).ToHaveAttributeAsync("data-state", "unacknowledged");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task What_is_put_on_the_shelf_is_quiet_and_what_comes_back_is_heard_again()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("alarms");
        await screen["sound-toggle"].ClickAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await Expect(screen["silence"]).ToBeVisibleAsync();
        var alarm = screen["alarm-acid-pump"];
        await alarm.GetByTestId("shelve").ClickAsync();
        await alarm.GetByLabel("Your name").FillAsync("T. Wren");
        await alarm.GetByLabel("Reason").FillAsync("mechanic is at it");
        await alarm.GetByTestId("confirm-shelve").ClickAsync();
        await Expect(screen["silence"]).ToHaveCountAsync(0);
        await alarm.GetByTestId("unshelve").ClickAsync();
        await alarm.GetByTestId("confirm-ack").ClickAsync();
        await Expect(screen["silence"]).ToBeVisibleAsync();
        await server.PublishAsync("hall/acid/state", "running");
        await Expect(screen["silence"]).ToHaveCountAsync(0);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Of_two_tabs_of_a_browser_one_sounds_and_the_other_takes_over_when_it_is_closed()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await screen["sound"].ClickAsync();
        await Expect(screen["sound"]).ToHaveAttributeAsync("data-state", "on");
        var other = await screen.Page.Context.NewPageAsync();
        await other.GotoAsync(server.Address.ToString());
        // Turned on before, in this browser: any press allows it.
        await other.GetByTestId("nav-alarms").ClickAsync();
        await Expect(other.GetByTestId("sound")).ToHaveAttributeAsync("data-state", "elsewhere");
        await screen.Page.CloseAsync();
        await Expect(other.GetByTestId("sound")).ToHaveAttributeAsync("data-state", "on");
    }

    [BrowserFact]
    public async Task Every_kind_of_call_can_be_tried_out_while_sound_is_off()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("alarms");
        foreach (var (call, name) in new[] { ("critical", "Critical"), ("high", "High"), ("medium", "Medium"), ("low", "Low"), ("lost", "Server not heard") })
        {
            await screen[$"test-sound-{call}"].ClickAsync();
            await Expect(screen["sound-played"]).ToContainTextAsync($"Played: {name}");
        }
        await Expect(screen["sound"]).ToHaveAttributeAsync("data-state", "off");
        screen.IsClean();
    }
}
