using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A pump fails: the alarm is seen and acknowledged, the fault is noted and mended.</summary>
public sealed class AlarmTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_pump_fault_is_seen_on_every_page_and_acknowledged_with_a_name()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "running");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("record");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("No alarm");
        await server.PublishAsync("hall/acid/state", "fault");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("A dosing pump reports a fault");

        await screen["alarm-bar"].ClickAsync();
        var alarm = screen["alarm-acid-pump"];
        await Expect(alarm).ToHaveAttributeAsync("data-state", "unacknowledged");
        await Expect(alarm).ToContainTextAsync("Acid pump reports a fault");
        await Expect(alarm).ToContainTextAsync("Test the water by hand");
        // Focus goes into the form that is opened, and back where Escape closes it.
        await alarm.GetByTestId("ack").ClickAsync();
        await Expect(alarm.GetByLabel("Your name")).ToBeFocusedAsync();
        await screen.Page.Keyboard.PressAsync("Escape");
        await Expect(alarm.GetByTestId("ack")).ToBeFocusedAsync();
        await alarm.GetByTestId("ack").ClickAsync();
        await alarm.GetByTestId("confirm-ack").ClickAsync();
        await Expect(alarm).ToContainTextAsync("Say who");
        await alarm.GetByLabel("Your name").FillAsync("T. Wren");
        await alarm.GetByLabel("Comment").FillAsync("on my way");
        await alarm.GetByTestId("confirm-ack").ClickAsync();
        await Expect(alarm).ToHaveAttributeAsync("data-state", "acknowledged");
        await Expect(alarm).ToContainTextAsync("acknowledged by T. Wren");
        await Expect(alarm.Locator(":focus")).ToHaveCountAsync(1);
        await Expect(screen["alarm-history"]).ToContainTextAsync("on my way");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("All acknowledged");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_fault_note_goes_from_open_to_done_and_the_alarm_goes_with_the_fault()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pumps");
        await Expect(screen["pump-acid-pump"]).ToHaveAttributeAsync("data-activity", "fault");
        await screen["note-acid-pump"].ClickAsync();
        await Expect(screen["field-asset"]).ToHaveValueAsync("acid-pump");
        await screen["field-alarm"].SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await screen.TypeAsync("field-seen", "no stroke, the relay clicks");
        await screen.TypeAsync("field-job-by", "T. Wren");
        await screen["submit-job"].ClickAsync();
        var note = screen["job-acid-pump"];
        await Expect(note).ToHaveAttributeAsync("data-state", "open");
        await Expect(note).ToContainTextAsync("answers an alarm");

        await CarryOnAsync(screen, "in_hand", null);
        await Expect(note).ToHaveAttributeAsync("data-state", "in_hand");
        await CarryOnAsync(screen, "done", "diaphragm replaced, primed, ten strokes counted");
        await Expect(note).ToHaveAttributeAsync("data-state", "done");
        await Expect(note).ToContainTextAsync("diaphragm replaced");

        await server.PublishAsync("hall/acid/state", "running");
        await Expect(screen["pump-acid-pump"]).ToHaveAttributeAsync("data-activity", "running");
        screen.IsClean();
    }

    private static async Task CarryOnAsync(Screen screen, string state, string? done)
    {
        await screen["job-acid-pump"].GetByRole(AriaRole.Button, new() { Name = "Carry on" }).ClickAsync();
        if (done is not null) await screen.TypeAsync("field-done", done);
        await screen[$"job-state-{state}"].CheckAsync();
        await screen["submit-job"].ClickAsync();
        await Expect(screen["job-form"]).ToHaveCountAsync(0);
    }
}
