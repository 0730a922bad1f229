using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Maintenance;
using PlantWatch.Server.Api;
using SkiaSharp;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A shift goes, another one comes; and a fault that is easier shown than said.</summary>
public sealed class HandoverTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task Who_leaves_writes_who_comes_signs_and_the_page_then_begins_with_what_is_new()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("handover");
        await Expect(screen["handover-since"]).ToContainTextAsync("No handover has been signed yet");
        await screen["submit-note"].ClickAsync();
        await Expect(screen["error-note"]).ToContainTextAsync("Write what who comes must know.");
        await screen["field-note"].FillAsync("The acid pump hums");
        await screen["field-leave-by"].FillAsync("T. Wren");
        await screen["submit-note"].ClickAsync();
        await Expect(screen["handover-waiting"]).ToContainTextAsync("The acid pump hums");
        await screen["field-come-by"].FillAsync("A. Reed");
        await screen["submit-sign"].ClickAsync();
        await Expect(screen["past-handover"]).ToContainTextAsync("signed by A. Reed");
        await Expect(screen["handover-waiting"]).ToHaveCountAsync(0);

        Assert.True((await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "drips at the head", null, JobState.Open, null, "A. Reed"))).IsSuccessStatusCode);
        await screen.GoAsync("record");
        await screen.GoAsync("handover");
        await Expect(screen["handover-since"]).ToContainTextAsync("drips at the head");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_picture_goes_with_the_job_and_what_is_none_is_said_and_left_out()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("jobs/acid-pump");
        await screen["field-seen"].FillAsync("drips at the head");
        using var bitmap = new SKBitmap(2000, 1000);
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 80);
        await screen["add-picture"].SetInputFilesAsync(new FilePayload[]
        {
            new() { Name = "pump.jpg", MimeType = "image/jpeg", Buffer = data.ToArray() }, new() { Name = "page.jpg", MimeType = "image/jpeg", Buffer = "<html>"u8.ToArray() },
        });
        await Expect(screen["pictures"].Locator("li[data-state=there]")).ToHaveCountAsync(1);
        await Expect(screen["pictures"].Locator("li[data-state=refused]")).ToContainTextAsync("page.jpg: cannot be read as a picture");
        await screen["field-job-by"].FillAsync("T. Wren");
        await screen["submit-job"].ClickAsync();
        await Expect(screen["error-pictures"]).ToContainTextAsync("has not arrived");
        await screen["pictures"].Locator("li[data-state=refused] button").ClickAsync();
        await screen["submit-job"].ClickAsync();
        await Expect(screen["job-pictures"].Locator("img")).ToHaveCountAsync(1);
        var job = (await server.GetAsync<List<JobView>>("/api/v1/jobs")).Single(j => j.Seen == "drips at the head");
        // Made small on the device: 1600 pixels at its longer side.
        using var kept = SKBitmap.Decode(await server.Http.GetByteArrayAsync(new Uri($"/api/v1/pictures/{job.Pictures.Single()}", UriKind.Relative)));
        Assert.Equal((1600, 800), (kept.Width, kept.Height));
        screen.IsClean();
    }
}
