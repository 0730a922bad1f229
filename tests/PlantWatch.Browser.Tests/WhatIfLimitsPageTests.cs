using PlantWatch.Browser.Tests.Browser;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Limits tried on the history: the question, what is wrong with it, the run, the answer and the line to copy.</summary>
public sealed class WhatIfLimitsPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_tighter_limit_is_asked_for_on_a_phone_and_answered_in_a_sentence_with_the_line_to_copy()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("what-if-limits");
        await phone["field-pool"].SelectOptionAsync("main");
        await phone["field-measurand"].SelectOptionAsync("free_chlorine");
        await Expect(phone["in-force"]).ToContainTextAsync("0.8 to 3");
        await Expect(phone["in-force"]).ToContainTextAsync("0.2 to 10 mg/L");
        // The test by hand of this plant found 1.5 mg/L.
        await phone.TypeAsync("field-low", "1,8");
        await phone.TypeAsync("field-from", "1");
        await phone["replay"].ClickAsync();
        await Expect(phone["answer"]).ToContainTextAsync("no alarm fewer, 1 more; none that asked for closing was lost");
        await Expect(phone["gained"]).ToContainTextAsync("A test is outside the pool's limit");
        await Expect(phone["gained"]).ToContainTextAsync("1.50 mg/L");
        await Expect(phone["plant-lines"]).ToContainTextAsync("measurand: free_chlorine, low: 1.8, high: 3");
        await Expect(phone["sure"]).ToContainTextAsync("the replay as it stands finds");
        Assert.False(await phone.AskAsync<bool>("() => document.documentElement.scrollWidth > innerWidth"));
        // The address is that of the run: it can be looked at again.
        await phone.Page.ReloadAsync();
        await Expect(phone["answer"]).ToContainTextAsync("1 more");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task Wrong_input_is_said_beside_its_field_by_the_page_and_by_the_server()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("what-if-limits");
        await screen["field-pool"].SelectOptionAsync("main");
        await screen.TypeAsync("field-high", "seven");
        await screen.TypeAsync("field-from", "400");
        await screen["replay"].ClickAsync();
        await Expect(screen["error-high"]).ToContainTextAsync("A number");
        await Expect(screen["error-from"]).ToContainTextAsync("92 days");
        await Expect(screen["field-high"]).ToHaveAttributeAsync("aria-invalid", "true");
        await screen.TypeAsync("field-from", "1");
        await screen.TypeAsync("field-high", "9");
        await screen["replay"].ClickAsync();
        await Expect(screen["error-high"]).ToContainTextAsync("no limit of a plant changes a stop");
        await screen.TypeAsync("field-high", "7.1");
        await screen["replay"].ClickAsync();
        await Expect(screen["error-low"]).ToContainTextAsync("expected low at or below high");
        await Expect(screen["answer"]).ToHaveCountAsync(0);
        screen.IsClean(c => c.Contains("400", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task A_run_that_the_server_no_longer_knows_is_said()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync($"what-if-limits/{Guid.CreateVersion7()}");
        await Expect(screen["what-if-limits"]).ToContainTextAsync("no longer known");
    }
}
