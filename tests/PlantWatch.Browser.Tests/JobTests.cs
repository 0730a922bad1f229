using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The fitter writes a job with its parts on the board, and the next shift reads of it.</summary>
public sealed class JobTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_job_goes_over_the_board_with_parts_and_minutes_and_wrong_input_is_said_beside_its_field()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("jobs");
        await screen["new-job"].ClickAsync();
        await screen["submit-job"].ClickAsync();
        // A failed save leads to what is to be mended.
        await Expect(screen["field-asset"]).ToBeFocusedAsync();
        await Expect(screen["mend-line"]).ToContainTextAsync("fields");
        await Expect(screen["error-asset"]).ToBeVisibleAsync();
        await Expect(screen["error-seen"]).ToBeVisibleAsync();

        await screen["field-asset"].SelectOptionAsync("acid-pump");
        await screen.TypeAsync("field-seen", "drips at the head");
        await screen.TypeAsync("field-minutes", "an hour");
        await screen["add-part"].ClickAsync();
        await screen["submit-job"].ClickAsync();
        await Expect(screen["error-minutes"]).ToContainTextAsync("Whole minutes");
        await Expect(screen["error-parts"]).ToBeVisibleAsync();
        await Expect(screen["field-seen"]).ToHaveValueAsync("drips at the head");

        await screen["field-minutes"].FillAsync("60");
        await screen["part-name-0"].FillAsync("head gasket");
        await screen["job-state-waiting_for_parts"].CheckAsync();
        await screen.TypeAsync("field-job-by", "T. Wren");
        await screen["submit-job"].ClickAsync();
        await Expect(screen["lane-waiting_for_parts"]).ToContainTextAsync("drips at the head");
        await Expect(screen["lane-waiting_for_parts"]).ToContainTextAsync("60 min at work");

        await screen.GoAsync("handover");
        await Expect(screen["handover-jobs"]).ToContainTextAsync("drips at the head");
        await Expect(screen["handover-happened"]).ToContainTextAsync("T. Wren");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_job_that_could_not_be_saved_is_still_there_after_the_page_was_left_and_is_sent_as_the_one_it_is()
    {
        var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("jobs");
        await screen["new-job"].ClickAsync();
        await Expect(screen["job-kept"]).ToHaveCountAsync(0);
        await server.StopAsync();
        await Expect(screen["not-live"]).ToBeVisibleAsync();
        await screen["field-asset"].SelectOptionAsync("acid-pump");
        await screen.TypeAsync("field-seen", "drips at the head");
        await screen.TypeAsync("field-job-by", "T. Wren");
        await screen["submit-job"].ClickAsync();
        await Expect(screen["error-form"]).ToContainTextAsync("cannot be reached");
        await Expect(screen["error-form"]).ToBeFocusedAsync();
        await Expect(screen["job-kept"]).ToContainTextAsync("kept on this device");
        await screen["nav-overview"].ClickAsync();
        await Expect(screen["pool-main"]).ToBeVisibleAsync();
        await screen.Page.GoBackAsync();
        await Expect(screen["jobs-unsaved"]).ToContainTextAsync("drips at the head");
        await screen["job-go-on"].ClickAsync();
        await Expect(screen["field-asset"]).ToHaveValueAsync("acid-pump");
        await Expect(screen["field-seen"]).ToHaveValueAsync("drips at the head");

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(screen["not-live"]).ToHaveCountAsync(0);
            await screen["submit-job"].ClickAsync();
            await Expect(screen["lane-open"]).ToContainTextAsync("drips at the head");
            await Expect(screen["jobs-unsaved"]).ToHaveCountAsync(0);
            screen.IsClean(expected: LiveTests.NobodyThere);
        }
    }
}
