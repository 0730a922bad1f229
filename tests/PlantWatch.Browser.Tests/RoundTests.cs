using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The manual round as it is walked with a phone in a wet hand.</summary>
public sealed class RoundTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_round_is_walked_one_screen_at_a_time_and_each_sample_becomes_a_check()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await phone["begin"].ClickAsync();
        await Expect(phone["error-round-who"]).ToBeVisibleAsync();
        await BeginAsync(phone, "main", "teaching");
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "sample");
        await phone.TypeAsync("field-place", "deep end");
        await phone["round-next"].ClickAsync();

        await TestAsync(phone, "temperature", "28,2");
        await TestAsync(phone, "free_chlorine", "1,2");
        await phone.TypeAsync("field-total_chlorine", "2,5");
        await Expect(phone["round-combined"]).ToContainTextAsync("1.30");
        await Expect(phone["round-combined"]).ToContainTextAsync("above 1");
        await phone["round-next"].ClickAsync();
        // Left out: its number was never typed.
        await Expect(phone["round-next"]).ToHaveTextAsync("Leave this test out");
        await phone["round-next"].ClickAsync();
        await phone["field-bottom-yes"].CheckAsync();
        await phone["round-next"].ClickAsync();
        await Expect(phone["look-ph"]).ToContainTextAsync("left out");
        await phone["round-next"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        await Expect(phone["check-answer"]).ToContainTextAsync("1.30");
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-pool", "teaching");

        var kept = Assert.Single(await server.ChecksAsync()).Check;
        Assert.Equal([(Measurand.FreeChlorine, 1.2), (Measurand.TotalChlorine, 2.5), (Measurand.Temperature, 28.2)], kept.Results.Select(r => (r.Measurand, r.Value)));
        Assert.Equal(("R. Castellan", "deep end", true), (kept.Who, kept.Place, kept.BottomVisible));
        phone.IsClean();
    }

    [BrowserFact]
    public async Task A_round_left_for_a_rescue_stands_where_it_was_and_asks_for_a_fresh_sample()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await BeginAsync(phone, "main");
        await phone["round-next"].ClickAsync();
        await TestAsync(phone, "temperature", "28,2");
        await phone.TypeAsync("field-free_chlorine", "1,2");
        await phone.Page.ReloadAsync();
        await Expect(phone["unfinished"]).ToContainTextAsync("R. Castellan");
        await Expect(phone["unfinished"]).ToContainTextAsync("Free chlorine");
        await phone["go-on"].ClickAsync();
        await Expect(phone["field-free_chlorine"]).ToHaveValueAsync("1,2");
        await Expect(phone["old-sample"]).ToHaveCountAsync(0);

        await LeaveForAsync(phone, minutes: 25);
        await Expect(phone["unfinished"]).ToContainTextAsync("25 min");
        await phone["go-on"].ClickAsync();
        await Expect(phone["old-sample"]).ToContainTextAsync("Total chlorine, pH");
        await phone["fresh-sample"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "sample");
        // What was read of the first sample is a check of its own, at the time it was taken.
        await phone.UntilAsync("() => !Object.keys(localStorage).some(k => k.startsWith('plantwatch.outbox.'))");
        var first = Assert.Single(await server.ChecksAsync()).Check;
        Assert.Equal([Measurand.FreeChlorine, Measurand.Temperature], first.Results.Select(r => r.Measurand));
        Assert.InRange((first.EnteredAt - first.SampledAt).TotalMinutes, 24, 26);
        // Total chlorine without free of the same water would say nothing of combined.
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "free_chlorine");
        await Expect(phone["field-free_chlorine"]).ToHaveValueAsync("");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task A_colour_read_after_its_time_is_said_at_once_and_told_with_the_check()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await BeginAsync(phone, "main");
        await phone["round-next"].ClickAsync();
        await phone["round-next"].ClickAsync();
        await phone["start-clock"].ClickAsync();
        await Expect(phone["test-clock"]).ToHaveAttributeAsync("data-phase", "reading");
        // The clock goes on across pages and over a restart.
        await phone["nav-overview"].ClickAsync();
        await Expect(phone["clock-free_chlorine"]).ToContainTextAsync("read now");
        await LeaveForAsync(phone, minutes: 3);
        await Expect(phone["clock-free_chlorine"]).ToHaveAttributeAsync("data-phase", "late");
        await phone.GoAsync("round");
        await phone["go-on"].ClickAsync();
        await phone.TypeAsync("field-free_chlorine", "1,6");
        await Expect(phone["late-read"]).ToContainTextAsync("Combined chlorine creeps in");
        await Expect(phone["clocks"]).ToHaveCountAsync(0);
        foreach (var _ in (string[])["free", "total", "ph", "around", "look"]) await phone["round-next"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        Assert.Contains("after its time", Assert.Single(await server.ChecksAsync()).Check.Note, StringComparison.Ordinal);
        phone.IsClean();
    }

    [BrowserFact]
    public async Task A_colour_that_flashes_and_goes_leads_to_a_diluted_sample_and_its_reading_is_multiplied()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await BeginAsync(phone, "main");
        await phone["round-next"].ClickAsync();
        await phone["round-next"].ClickAsync();
        await phone["look-pink_flash"].CheckAsync();
        await Expect(phone["seen-advice"]).ToContainTextAsync("Dilute");
        await phone["dilute-5"].CheckAsync();
        await Expect(phone["dilution"]).ToContainTextAsync("10 mL of sample, made up to 50 mL");
        await phone.TypeAsync("field-free_chlorine", "2,4");
        await Expect(phone["diluted-result"]).ToContainTextAsync("12.00 mg/L");
        await phone["look-none"].CheckAsync();
        foreach (var _ in (string[])["free", "total", "ph", "around", "look"]) await phone["round-next"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        var result = Assert.Single(Assert.Single(await server.ChecksAsync()).Check.Results);
        Assert.Equal((12.0, 5.0), (result.Value, result.Dilution));
        phone.IsClean();
    }

    [BrowserFact]
    public async Task Tablets_are_counted_by_a_big_button_and_one_is_taken_back()
    {
        await using var server = await WholeServer.StartAsync(plant: TestPlant.Yaml.Replace("volume_m3: 400", "volume_m3: 400\n        checks:\n          - { what: [total_alkalinity], at: [\"00:00\", \"02:00\", \"04:00\", \"06:00\", \"08:00\", \"10:00\", \"12:00\", \"14:00\", \"16:00\", \"18:00\", \"20:00\", \"22:00\"] }", StringComparison.Ordinal));
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        // It is due, and so it is chosen already.
        await Expect(phone["walk-main"].Locator("input")).ToBeCheckedAsync();
        await phone.TypeAsync("field-round-who", "R. Castellan");
        await phone["begin"].ClickAsync();
        await phone["round-next"].ClickAsync();
        await phone["method-tablet_count"].CheckAsync();
        var one = (await phone["count-one"].BoundingBoxAsync())!;
        Assert.True(one.Height >= 100 && one.Width >= 250, $"{one.Width} by {one.Height} px");
        for (var i = 0; i < 5; i++) await phone["count-one"].ClickAsync();
        await phone["count-undo"].ClickAsync();
        await Expect(phone["counter"]).ToHaveAttributeAsync("data-count", "4");
        // Four tablets in 50 mL: 4 x 40 - 20 mg/L (common practice, Core/Chemistry/Methods/TabletCount).
        await Expect(phone["counter"]).ToContainTextAsync("140 mg/L");
        foreach (var _ in (string[])["count", "around", "look"]) await phone["round-next"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        Assert.Equal((140, TestMethod.TabletCount), Assert.Single(await server.ChecksAsync()).Check.Results.Select(r => (r.Value, r.Method)).Single());
        phone.IsClean();
    }

    [BrowserFact]
    public async Task A_refused_check_goes_from_the_round_into_its_form_with_what_was_said_of_each_field()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await BeginAsync(phone, "main");
        foreach (var _ in (string[])["sample", "temperature", "free"]) await phone["round-next"].ClickAsync();
        await TestAsync(phone, "total_chlorine", "99999");
        await phone["round-next"].ClickAsync();
        await phone.TypeAsync("field-bathers", "999999");
        foreach (var _ in (string[])["around", "look"]) await phone["round-next"].ClickAsync();

        var refused = phone["round-refused"];
        await Expect(refused).ToContainTextAsync("Total chlorine: ");
        await Expect(refused).ToContainTextAsync("Bathers in the water: ");
        await Expect(refused).ToBeFocusedAsync();
        await phone["round-mend"].ClickAsync();
        await Expect(phone["field-total_chlorine"]).ToHaveValueAsync("99999");
        await Expect(phone["error-total_chlorine"]).ToContainTextAsync("200");
        await Expect(phone["error-bathers"]).ToBeVisibleAsync();
        await Expect(phone["field-total_chlorine"]).ToBeFocusedAsync();
        await Expect(phone["mend-line"]).ToContainTextAsync("2 fields");
        await Expect(phone["outbox-refused"]).ToHaveCountAsync(0);
        await phone.TypeAsync("field-total_chlorine", "1,6");
        await phone.TypeAsync("field-bathers", "12");
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        Assert.Equal(12, Assert.Single(await server.ChecksAsync()).Check.Bathers);
        phone.IsClean(expected: c => c.Contains("400", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task What_cannot_be_sent_is_mended_where_it_stands_and_what_is_mended_from_the_look_leads_back_to_it()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await BeginAsync(phone, "main");
        await Expect(phone["round"].Locator("h1")).ToBeFocusedAsync();
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"].Locator("h1")).ToBeFocusedAsync();
        await phone["round-next"].ClickAsync();
        await phone.TypeAsync("field-free_chlorine", "abc");
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "free_chlorine");
        await Expect(phone["field-free_chlorine"]).ToBeFocusedAsync();
        await phone.TypeAsync("field-free_chlorine", "1,2");
        // The key that a phone shows as the next one.
        await phone.Page.Keyboard.PressAsync("Enter");
        await TestAsync(phone, "total_chlorine", "1,4");
        await phone.TypeAsync("field-ph", "17,2");
        await Expect(phone["error-ph"]).ToContainTextAsync("between 0 and 14");
        await Expect(phone["beyond"]).ToHaveCountAsync(0);
        await phone.TypeAsync("field-ph", "7,2");
        await phone["round-next"].ClickAsync();
        await phone.TypeAsync("field-bathers", "zw\u00f6lf");
        await Expect(phone["error-bathers"]).ToBeVisibleAsync();
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "around");
        await phone.TypeAsync("field-bathers", "12");
        await phone["round-next"].ClickAsync();

        await phone["look-ph"].ClickAsync();
        await phone.TypeAsync("field-ph", "7,4");
        await phone["round-next"].ClickAsync();
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", "look");
        await Expect(phone["look-ph"]).ToContainTextAsync("7.40");
        await phone["round-next"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task Without_a_server_what_is_under_a_stop_is_told_as_the_stop_and_not_as_a_limit()
    {
        var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("round");
        await phone.UntilAsync("() => localStorage.getItem('plantwatch.stops') !== null");
        await BeginAsync(phone, "main");
        await server.StopAsync();
        await Expect(phone["not-live"]).ToBeVisibleAsync();
        foreach (var _ in (string[])["sample", "temperature"]) await phone["round-next"].ClickAsync();
        await TestAsync(phone, "free_chlorine", "0,1");
        foreach (var _ in (string[])["total", "ph", "around", "look"]) await phone["round-next"].ClickAsync();
        await Expect(phone["held-here"]).ToContainTextAsync("under the stop at 0.20");
        await Expect(phone["held-here"]).ToContainTextAsync("nobody should be in the water");
        await Expect(phone["held-here"]).Not.ToContainTextAsync("below 0.80");
        phone.IsClean(expected: LiveTests.NobodyThere);
    }

    internal static async Task BeginAsync(Screen phone, params string[] pools)
    {
        await phone.TypeAsync("field-round-who", "R. Castellan");
        foreach (var pool in pools) await phone[$"walk-{pool}"].Locator("input").CheckAsync();
        await phone["begin"].ClickAsync();
    }

    internal static async Task TestAsync(Screen phone, string measurand, string figure)
    {
        await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", measurand);
        await phone.TypeAsync($"field-{measurand}", figure);
        await phone["round-next"].ClickAsync();
    }

    // Nobody waits for minutes in a test: the round on the device is made older by them, and the page opened anew.
    private static async Task LeaveForAsync(Screen phone, int minutes)
    {
        await phone.AskAsync<int>("""
            by => {
              const round = JSON.parse(localStorage.getItem('plantwatch.round'));
              round.begunAt -= by;
              for (const stop of round.stops) {
                if (stop.draft.whenExact !== null) stop.draft.whenExact -= by;
                for (const timer of stop.timers) timer.from -= by;
              }
              localStorage.setItem('plantwatch.round', JSON.stringify(round));
              return 0;
            }
            """, minutes * 60_000);
        await phone.Page.ReloadAsync();
    }
}
