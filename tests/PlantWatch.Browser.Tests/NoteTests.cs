using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The strips of a pool as a place to read and to write: notes over a span of time, marks that open, another day beside this one, files.</summary>
public sealed class NoteTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_time_is_dragged_and_noted_and_the_note_is_there_after_a_reload()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/teaching");
        await DragAsync(screen, 0.3f, 0.5f, shift: true);
        await Expect(screen["chosen-time"]).ToBeVisibleAsync();
        await screen["submit-note"].ClickAsync();
        await Expect(screen["error-note-text"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-note-text", "School party");
        await screen.TypeAsync("field-note-by", "R. Hale");
        await screen["submit-note"].ClickAsync();
        await Expect(screen["note-form"]).ToHaveCountAsync(0);
        await Expect(screen["note-bar"]).ToHaveTextAsync("School party");
        await screen.Page.ReloadAsync();
        await Expect(screen["note-bar"]).ToHaveTextAsync("School party");

        var note = Assert.Single(await NotesAsync(server));
        // A fifth of six hours, to what a pixel is.
        Assert.InRange(note.To - note.From, TimeSpan.FromMinutes(69), TimeSpan.FromMinutes(75));
        await screen["note-bar"].ClickAsync();
        await screen["note-retract"].ClickAsync();
        await screen.TypeAsync("field-note-why", "that was the main pool");
        await screen["submit-note"].ClickAsync();
        await Expect(screen["note-bar"]).ToHaveAttributeAsync("data-state", "retracted");
        var gone = Assert.Single(await NotesAsync(server));
        Assert.Equal((true, "School party"), (gone.Retracted, Assert.Single(gone.Before).Text));
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_note_is_written_and_corrected_by_keyboard_alone_and_waits_on_the_device_while_the_server_is_away()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/teaching");
        await screen.Page.RouteAsync("**/api/v1/notes/**", route => route.AbortAsync());
        // The strips hear keys when they are drawn.
        await Expect(screen["strips"].Locator("canvas").First).ToBeVisibleAsync();
        await screen["strips"].FocusAsync();
        await screen.Page.Keyboard.PressAsync("n");
        await Expect(screen["field-note-text"]).ToBeFocusedAsync();
        await screen.Page.Keyboard.TypeAsync("Filter 2 opened");
        await screen.TabToAsync("[data-testid=field-note-by]");
        await screen.Page.Keyboard.TypeAsync("R. Hale");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["note-bar"]).ToHaveAttributeAsync("data-state", "waiting");
        Assert.Empty(await NotesAsync(server));
        await screen.Page.UnrouteAsync("**/api/v1/notes/**");
        await Expect(screen["note-bar"]).ToHaveAttributeAsync("data-state", "", new() { Timeout = Chromium.Patience });

        await screen["note-bar"].FocusAsync();
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.TabToAsync("[data-testid=note-correct]");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["field-note-text"]).ToBeFocusedAsync();
        await screen.Page.Keyboard.PressAsync("End");
        await screen.Page.Keyboard.TypeAsync(" and closed");
        await screen.TabToAsync("[data-testid=field-note-why]");
        await screen.Page.Keyboard.TypeAsync("half of it was missing");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["note-bar"]).ToHaveAttributeAsync("data-state", "corrected");
        Assert.Equal("Filter 2 opened and closed", Assert.Single(await NotesAsync(server)).Text);
        screen.IsClean(c => c.Contains("Failed to load resource", StringComparison.Ordinal) || c.Contains("ERR_FAILED", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task Marks_are_walked_and_opened_by_keyboard_and_lead_to_what_they_are_about()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(200), new TestResult(Measurand.Ph, 7.42, TestMethod.Photometer)) with { PoolId = "teaching" });
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(100), new TestResult(Measurand.Ph, 8.1, TestMethod.Photometer)) with { PoolId = "teaching" });
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/teaching");
        await Expect(screen["mark-test"].First).ToBeVisibleAsync();
        // Escape from a note that is being written leads back to where it was begun.
        await screen["write-note"].ClickAsync();
        await Expect(screen["field-note-text"]).ToBeFocusedAsync();
        await screen.Page.Keyboard.PressAsync("Escape");
        await Expect(screen["write-note"]).ToBeFocusedAsync();
        // All tools stand before the lane, and the lane is one stop.
        await screen["export-svg"].FocusAsync();
        await screen.TabToAsync("[data-testid=marks-lane] button");
        await screen.Page.Keyboard.PressAsync("Home");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen["mark-panel"]).ToBeFocusedAsync();
        await Expect(screen["opened-test"]).ToContainTextAsync("R. Castellan");
        await screen.Page.Keyboard.PressAsync("Escape");
        await Expect(screen["mark-panel"]).ToHaveCountAsync(0);
        // The focus goes back to where it came from.
        await Expect(screen.Page.Locator("[data-testid=marks-lane] button:focus")).ToHaveCountAsync(1);
        // The alarm was raised a moment ago: its mark is there when the strips have come so far.
        await Expect(screen.Page.Locator("[data-testid=mark-alarm], [data-testid=mark-several]").Last).ToBeVisibleAsync();
        await screen.Page.Keyboard.PressAsync("End");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen["opened-alarm"].First.GetByRole(AriaRole.Link).ClickAsync();
        await Assertions.Expect(screen.Page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("#/alarm/"));
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Another_day_is_named_and_asked_for_and_the_table_has_what_is_seen()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        await server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", new NoteRequest("teaching", WholeServer.Now - TimeSpan.FromHours(2), WholeServer.Now - TimeSpan.FromHours(1), "School party", "R. Hale"));
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/teaching");
        var asked = await screen.Page.RunAndWaitForRequestAsync(() => screen["compare"].SelectOptionAsync("yesterday"), r => r.Url.Contains("/series?", StringComparison.Ordinal) && r.Url.EndsWith("probe=teaching-ph", StringComparison.Ordinal));
        Assert.True(DateTimeOffset.Parse(System.Web.HttpUtility.ParseQueryString(new Uri(asked.Url).Query)["to"]!, System.Globalization.CultureInfo.InvariantCulture) < DateTimeOffset.UtcNow - TimeSpan.FromHours(18), asked.Url);
        await Expect(screen["ghost-line"]).ToContainTextAsync("the day before");
        await Expect(screen["strip-teaching-ph-summary"]).ToContainTextAsync("Last 7.");
        var file = await screen.Page.RunAndWaitForDownloadAsync(() => screen["export-csv"].PressAsync("Enter"));
        Assert.StartsWith("Bramble-Street-Baths-Teaching-pool-", file.SuggestedFilename, StringComparison.Ordinal);
        var lines = await File.ReadAllLinesAsync(await file.PathAsync());
        Assert.StartsWith("kind,pool,subject,name,quantity,unit,local_time,utc_time,zone,", lines[0].TrimStart('\ufeff'), StringComparison.Ordinal);
        Assert.Contains(lines, l => l.Contains(",teaching-ph,", StringComparison.Ordinal) && l.Contains("Europe/London", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("note,", StringComparison.Ordinal) && l.EndsWith("School party", StringComparison.Ordinal));
        screen.IsClean();
    }

    private static async Task DragAsync(Screen screen, float from, float to, bool shift)
    {
        var over = screen["strip-teaching-ph"].Locator(".u-over");
        await over.ScrollIntoViewIfNeededAsync();
        var box = await over.BoundingBoxAsync() ?? throw new InvalidOperationException("no strip in sight");
        if (shift) await screen.Page.Keyboard.DownAsync("Shift");
        await screen.Page.Mouse.MoveAsync(box.X + (box.Width * from), box.Y + 30);
        await screen.Page.Mouse.DownAsync();
        await screen.Page.Mouse.MoveAsync(box.X + (box.Width * to), box.Y + 30, new MouseMoveOptions { Steps = 6 });
        await screen.Page.Mouse.UpAsync();
        if (shift) await screen.Page.Keyboard.UpAsync("Shift");
    }

    private static Task<List<NoteView>> NotesAsync(WholeServer server) => server.GetAsync<List<NoteView>>("/api/v1/notes?pool=teaching");
}
