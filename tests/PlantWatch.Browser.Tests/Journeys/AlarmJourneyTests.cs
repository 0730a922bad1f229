using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests.Journeys;

/// <summary>The duty of one person with one alarm.</summary>
public sealed class AlarmJourneyTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task An_alarm_goes_from_the_bell_to_the_handover()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "running");
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync();
        await Expect(screen["alarm-bar"]).ToContainTextAsync("No alarm");
        await server.PublishAsync("hall/acid/state", "fault");
        await Expect(screen["alarm-bar"]).ToContainTextAsync("A dosing pump reports a fault");

        var journey = new Journey(screen, "an alarm from the bell to the handover");
        await journey.TapAsync("alarm-bar");
        var alarm = screen["alarm-acid-pump"];
        await journey.TapAsync(alarm.GetByTestId("ack"));
        await journey.FillAsync(alarm.GetByLabel("Your name"), "T. Wren");
        await journey.FillAsync(alarm.GetByLabel("Comment"), "Stroke counter still, valve closed");
        await journey.TapAsync(alarm.GetByTestId("confirm-ack"));
        await Expect(alarm).ToHaveAttributeAsync("data-state", "acknowledged");

        await journey.TapAsync("nav-more");
        await journey.TapAsync("more-handover");
        await Expect(screen.Page.Locator("main")).ToContainTextAsync("A dosing pump reports a fault");
        await journey.FillAsync("field-note", "Acid pump stands, dose nothing before it is seen to");
        await journey.FillAsync("field-leave-by", "T. Wren");
        await journey.TapAsync("submit-note");
        await Expect(screen["handover-waiting"]).ToContainTextAsync("Acid pump stands");
        await journey.FillAsync("field-come-by", "A. Reed");
        await journey.TapAsync("submit-sign");
        await Expect(screen["past-handover"]).ToContainTextAsync("signed by A. Reed");
        journey.CostsWhatIsListed();
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_pump_fault_goes_from_the_notice_to_the_confirmed_repair()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("pumps");
        await Expect(screen["pump-acid-pump"]).ToHaveAttributeAsync("data-activity", "fault");

        var journey = new Journey(screen, "a pump fault from the notice to the confirmed repair");
        await journey.TapAsync("note-acid-pump");
        await journey.FillAsync("field-seen", "no stroke, the relay clicks");
        await journey.FillAsync("field-job-by", "T. Wren");
        await journey.TapAsync("submit-job");
        var job = screen["job-acid-pump"];
        await Expect(job).ToHaveAttributeAsync("data-state", "open");
        await journey.TapAsync(job.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Carry on" }));
        await journey.TapAsync("job-state-done");
        await journey.FillAsync("field-done", "diaphragm replaced, primed, ten strokes counted");
        await journey.TapAsync("submit-job");
        await Expect(job).ToHaveAttributeAsync("data-state", "done");
        // The pump itself confirms it: it runs, and its alarm is over.
        await server.PublishAsync("hall/acid/state", "running");
        await Expect(screen["pump-acid-pump"]).ToHaveAttributeAsync("data-activity", "running");
        await Expect(screen["alarm-bar"]).Not.ToContainTextAsync("new");
        journey.CostsWhatIsListed();
        screen.IsClean();
    }
}
