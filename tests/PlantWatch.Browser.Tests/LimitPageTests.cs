using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A row of the picked pack is confirmed on a phone with the document in hand, and taken back with a reason.</summary>
public sealed class LimitPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly string Plant = "limit_pack: who-2006\npeople:\n  - { id: b, name: I. Brandvold, role: engineer }\n  - { id: c, name: R. Castellan, role: operator }\n" + TestPlant.Yaml.ReplaceLineEndings("\n");

    [BrowserFact]
    public async Task A_row_is_confirmed_by_who_may_and_taken_back_with_a_reason()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync();
        await Expect(screen["limits-of-main"]).ToContainTextAsync("No limits in force");
        await screen["limits-of-main"].ClickAsync();
        await Expect(screen["progress-hall"]).ToContainTextAsync("0 of ");

        await screen["confirm-cya"].ClickAsync();
        // The row may be far below: what is missing is told by its field, and the hand is there already.
        await Expect(screen["error-limits-by-hall"]).ToContainTextAsync("Say who you are.");
        await Expect(screen["error-limits-document-hall"]).ToBeVisibleAsync();
        await Expect(screen["field-limits-by-hall"]).ToBeFocusedAsync();
        await screen.TypeAsync("field-limits-by-hall", "R. Castellan");
        await screen.TypeAsync("field-limits-document-hall", "the guidelines, 5.10");
        await screen["confirm-cya"].ClickAsync();
        await Expect(screen["error-limits-by-hall"]).ToBeVisibleAsync();
        await Expect(screen["error-limits-document-hall"]).ToHaveCountAsync(0);
        await screen.TypeAsync("field-limits-by-hall", "I. Brandvold");
        await screen["confirm-cya"].ClickAsync();
        await Expect(screen["confirmed-cya"]).ToContainTextAsync("Confirmed by I. Brandvold");
        await Expect(screen["bounds-main"]).ToContainTextAsync("\u2264 100 mg/L");

        await screen["back-cya"].ClickAsync();
        await screen["revoke-cya"].ClickAsync();
        await Expect(screen["error-why-cya"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-why-cya", "an older edition lay on the table");
        await screen["revoke-cya"].ClickAsync();
        await Expect(screen["waits-cya"]).ToBeVisibleAsync();
        // The refusal of a person who may not.
        screen.IsClean(expected: c => c.Contains("400", StringComparison.Ordinal));
    }
}
