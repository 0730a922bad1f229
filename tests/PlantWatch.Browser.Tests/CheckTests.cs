using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The check form as it is used at the poolside: on a phone, in the form itself, with and without a server in reach.</summary>
public sealed class CheckTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 390;

    [BrowserFact]
    public async Task A_decimal_comma_is_understood_and_combined_chlorine_stands_there_while_typing()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await phone.TypeAsync("field-free_chlorine", "1,2");
        await Expect(phone["combined-preview"]).Not.ToContainTextAsync("mg/L");
        await phone.TypeAsync("field-total_chlorine", "1,95");
        await Expect(phone["combined-preview"]).ToContainTextAsync("0.75");
        // Above the pool's limit of 1.0 mg/L, and free above total, are told at once.
        await phone.TypeAsync("field-total_chlorine", "2,5");
        await Expect(phone["combined-preview"]).ToContainTextAsync("above 1");
        await phone.TypeAsync("field-total_chlorine", "1.0");
        await Expect(phone["combined-preview"]).ToContainTextAsync("Free stands above total");

        await phone.TypeAsync("field-total_chlorine", "1,50");
        await phone.TypeAsync("field-who", "R. Castellan");
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        await Expect(phone["check-answer"]).ToContainTextAsync("0.30");
        var kept = Assert.Single(await server.ChecksAsync()).Check;
        Assert.Equal((1.2, 1.5), (kept.Results[0].Value, kept.Results[1].Value));
        Assert.True(kept.SampledAt <= kept.EnteredAt);
        phone.IsClean();
    }

    [BrowserFact]
    public async Task Checks_entered_on_a_phone_change_what_is_thought_of_a_probe_and_say_why()
    {
        await using var server = await TestPlant.StartAsync();
        await using var wall = await chromium.OpenAsync(server.Address);
        await wall.GoAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await phone.TypeAsync("field-who", "R. Castellan");

        // The probe reads half a pH too much: one test alone asks for a repeat, further ones find against the probe.
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.90", 20));
        await EnterAsync(phone, "7,40");
        await Expect(phone["judged-ph"]).ToHaveAttributeAsync("data-verdict", "check_suspect");
        await Expect(wall["standing-ph"]).Not.ToHaveAttributeAsync("data-standing", "out_of_specification");
        foreach (var test in (string[])["7,41", "7,39", "7,40"])
        {
            await phone["another-check"].ClickAsync();
            await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.90", 20));
            await EnterAsync(phone, test);
        }

        await Expect(phone["judged-ph"]).ToHaveAttributeAsync("data-verdict", "probe_drifts");
        await Expect(phone["judged-ph"]).ToContainTextAsync("Reads");
        await Expect(phone["judged-ph"]).ToContainTextAsync("high");
        await Expect(phone["judged-ph"]).ToContainTextAsync("do not rely on it");
        await Expect(wall["standing-ph"]).ToHaveAttributeAsync("data-standing", "out_of_specification");
        await wall.GoAsync("pool/main");
        await Expect(wall["probe-ph"]).ToContainTextAsync("Out of specification");
        await Expect(wall["probe-ph"]).ToContainTextAsync("do not rely on it");
        phone.IsClean();
        wall.IsClean();
    }

    [BrowserFact]
    public async Task A_check_entered_without_a_server_waits_on_the_device_and_is_kept_once_when_it_is_back()
    {
        var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await server.StopAsync();
        await Expect(phone["not-live"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-who", "R. Castellan");
        await EnterAsync(phone, "7,40", outcome: "unreachable");
        // Another page is opened, the phone is put away: what was entered lies on the device, not in the page.
        await phone["nav-overview"].ClickAsync();
        await phone["nav-check"].ClickAsync();
        await Expect(phone["outbox-waiting"]).ToContainTextAsync("Main pool");

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(phone["outbox"]).ToHaveCountAsync(0);
            await Expect(phone["life"]).ToHaveTextAsync("Live");
            var kept = Assert.Single(await server.ChecksAsync());
            Assert.Equal(7.4, kept.Check.Results.Single().Value);
            Assert.True(kept.Check.EnteredAt < kept.ArrivedAt, "entry and arrival are kept apart");
            phone.IsClean(expected: LiveTests.NobodyThere);
        }
    }

    [BrowserFact]
    public async Task A_check_whose_answer_was_lost_is_sent_again_and_kept_once()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await phone.TypeAsync("field-who", "R. Castellan");
        // The server takes it, but the answer never reaches the phone.
        var lost = 0;
        await phone.Page.RouteAsync("**/api/v1/checks/*", async route =>
        {
            if (Interlocked.Increment(ref lost) > 1) { await route.ContinueAsync(); return; }
            await route.FetchAsync();
            await route.AbortAsync();
        });
        await phone.TypeAsync("field-ph", "7,40");
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
        Assert.True(lost > 1, "it was sent only once");
        Assert.Single(await server.ChecksAsync());
        phone.IsClean(expected: c => c.Contains("ERR_FAILED", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task An_impossible_check_is_set_aside_with_its_reason_and_holds_up_nobody()
    {
        var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await server.StopAsync();
        await Expect(phone["not-live"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-who", "R. Castellan");
        await phone.TypeAsync("field-temperature", "282");
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "unreachable");
        await phone["another-check"].ClickAsync();
        await EnterAsync(phone, "7,40", outcome: "unreachable");

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
            await Expect(phone["outbox-refused"]).ToContainTextAsync("110");
            Assert.Equal(7.4, Assert.Single(await server.ChecksAsync()).Check.Results.Single().Value);
            // It goes back into the form, where the slip is mended.
            await phone["outbox-refused"].GetByRole(AriaRole.Button, new() { Name = "Open in the form" }).ClickAsync();
            await Expect(phone["field-temperature"]).ToHaveValueAsync("282");
            await Expect(phone["error-temperature"]).ToBeVisibleAsync();
            await phone.TypeAsync("field-temperature", "28,2");
            await phone["submit-check"].ClickAsync();
            await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
            await Expect(phone["outbox"]).ToHaveCountAsync(0);
            Assert.Equal(2, (await server.ChecksAsync()).Count);
            phone.IsClean(expected: c => LiveTests.NobodyThere(c) || c.Contains("400", StringComparison.Ordinal));
        }
    }

    private static async Task EnterAsync(Screen phone, string ph, string outcome = "answered")
    {
        await phone.TypeAsync("field-ph", ph);
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", outcome);
    }
}
