using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A probe is calibrated on a phone, step by step: with typed values, over a reload and a wrong bottle, signed by one and reviewed by another.</summary>
public sealed class BenchPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_person_is_led_from_as_found_to_a_signed_sheet_and_another_reviews_it()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.40");
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("calibrate/ph");
        await screen["begin"].ClickAsync();
        await Expect(screen["error-bench-start-by"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-bench-start-by", "R. Castellan");
        await screen["begin"].ClickAsync();

        // Its readings are no pool water from now on.
        await Expect(screen["working"]).ToContainTextAsync("function check until");
        await screen["next"].ClickAsync();
        await Expect(screen["error-celsius"]).ToBeVisibleAsync();
        await Expect(screen["field-celsius"]).ToBeFocusedAsync();
        await Expect(screen["mend-line"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-celsius", "20");
        await Expect(screen["known"]).ToContainTextAsync("7.02");
        await screen["bottle-phosphate"].ClickAsync();
        await Expect(screen["known"]).ToContainTextAsync("6.88");
        await screen["bottle-technical7"].ClickAsync();
        await screen.TypeAsync("field-reading", "7.30");

        // A reload loses nothing of it.
        await screen.Page.ReloadAsync();
        await Expect(screen["field-reading"]).ToHaveValueAsync("7.30");
        await screen["next"].ClickAsync();
        await PointAsync(screen, 2, "20", "4.25");
        await screen["work-cleaned"].ClickAsync();
        await screen["next"].ClickAsync();

        // Bottles mixed up are named before anything is signed.
        await Expect(screen["field-celsius"]).ToHaveValueAsync("20");
        await PointAsync(screen, 1, "20", "4.10");
        await PointAsync(screen, 2, "20", "7.12");
        await Expect(screen["result"]).ToContainTextAsync("the other way round");
        await screen["bench-back"].ClickAsync();
        await Expect(screen["place"]).ToContainTextAsync("2");
        await screen["bench-back"].ClickAsync();
        await PointAsync(screen, 1, "20", "7.12");
        await PointAsync(screen, 2, "20", "4.10");
        await Expect(screen["verdict"]).ToHaveAttributeAsync("data-verdict", "within");
        await Expect(screen["slope"]).ToHaveTextAsync("100.0 %");
        await Expect(screen["offset"]).ToContainTextAsync("6 mV");
        await screen["sign"].ClickAsync();
        await Expect(screen["signed"]).ToContainTextAsync("It holds from now on");

        await screen["show-sheet"].ClickAsync();
        await Expect(screen["sheet"]).ToContainTextAsync("As found");
        await Expect(screen["reviewer"]).ToContainTextAsync("not reviewed yet");
        await screen["accept"].ClickAsync();
        await Expect(screen["error-review-by"]).ToContainTextAsync("a second person");
        await screen.TypeAsync("field-review-by", "I. Brandvold");
        await screen["accept"].ClickAsync();
        await Expect(screen["reviewer"]).ToContainTextAsync("I. Brandvold");
        Assert.Equal(0, await screen.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth"));

        await server.PublishAsync("hall/ph", "7.50");
        await screen.GoAsync("probe/ph");
        await Expect(screen["value-ph"].First).ToHaveTextAsync("7.40");
    }

    [BrowserFact]
    public async Task A_reading_that_has_settled_is_taken_with_one_touch()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("calibrate/ph");
        await screen.TypeAsync("field-bench-start-by", "R. Castellan");
        await screen["begin"].ClickAsync();
        await screen["put-in"].ClickAsync();
        await Expect(screen["no-readings"]).ToBeVisibleAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("4.01", 5));
        await Expect(screen["settle"]).ToHaveAttributeAsync("data-settled", "false");
        await Expect(screen["settle"]).ToContainTextAsync("4.01");
        await Expect(screen["take"]).ToHaveCountAsync(0);
    }

    [BrowserFact]
    public async Task Without_a_server_the_sheet_is_typed_and_kept_until_it_can_be_signed()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("calibrate/ph");
        await screen.TypeAsync("field-bench-start-by", "R. Castellan");
        await screen.Page.RouteAsync("**/api/v1/bench/**", route => route.AbortAsync());
        await screen["begin"].ClickAsync();
        await Expect(screen["cannot-mark"]).ToBeVisibleAsync();
        await screen["begin-anyway"].ClickAsync();
        await PointAsync(screen, 1, "25", "7.10");
        await PointAsync(screen, 2, "25", "4.15");
        await screen["work-none"].ClickAsync();
        await screen["next"].ClickAsync();
        await Expect(screen["result-away"]).ToBeVisibleAsync();
        await screen.Page.UnrouteAsync("**/api/v1/bench/**");
        await screen.Page.ReloadAsync();
        await Expect(screen["slope"]).ToHaveTextAsync("98.3 %");
        await screen["sign"].ClickAsync();
        await Expect(screen["signed"]).ToBeVisibleAsync();
    }

    // No hand is as fast as this one: it would type into the form of the point before, in the moment in which it goes.
    private static async Task PointAsync(Screen screen, int place, string celsius, string reading)
    {
        await Expect(screen["place"]).ToContainTextAsync($"{place} of 2");
        // In one go: the field may hold the temperature of the point before, and clearing it is a keystroke of its own that this hand makes in the moment of the turn.
        await screen["field-celsius"].FillAsync(celsius);
        await Expect(screen["field-celsius"]).ToHaveValueAsync(celsius);
        await screen.TypeAsync("field-reading", reading);
        await screen["next"].ClickAsync();
    }
}
