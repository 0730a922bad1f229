using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The page that accounts for everything that arrived.</summary>
public sealed class RecordTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_sums_close_on_the_page_and_what_was_refused_stands_there_with_its_bytes_and_its_reason()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{7.30 + (i % 5 * 0.01):0.00}")));
        foreach (var (topic, payload) in ((string, string)[])[("hall/ph", "seven"), ("hall/ph", "14.5"), ("hall/nobody", "7.4"), ("hall/ph", "NaN"), ("hall/ph", "<b>7</b>")])
            await server.PublishAsync(topic, payload);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("record");
        foreach (var (sum, value) in ((string, string)[])[("received", "45"), ("stored", "40"), ("duplicates", "0"), ("refused", "5"), ("in-flight", "0")])
            await Expect(screen[$"sum-{sum}"]).ToHaveAttributeAsync("data-value", value);
        await Expect(screen["sum-closes"]).ToHaveAttributeAsync("data-closes", "true");
        foreach (var (reason, words) in ((string, string)[])[("outside_range", "14.5"), ("unknown_topic", "hall/nobody"), ("not_finite", "NaN")])
            await Expect(screen[$"refusal-{reason}"]).ToContainTextAsync(words);
        // A payload is shown as what it is: text, whatever it pretends to be.
        await Expect(screen["refusal-not_a_number"].Filter(new() { HasText = "<b>7</b>" })).ToHaveCountAsync(1);
        await Expect(screen["refusal-not_a_number"].Filter(new() { HasText = "seven" })).ToContainTextAsync("5 bytes");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_broker_that_is_not_there_is_told_with_what_to_do_and_one_that_listens_as_such()
    {
        await using var apart = await WholeServer.StartAsync(set: o => (o.Broker.Mode, o.Broker.Port) = (BrokerMode.External, Peer.FreePort()));
        await using var screen = await chromium.OpenAsync(apart.Address, 390);
        await screen.GoAsync("record");
        await Expect(screen["broker-state"]).ToContainTextAsync("Nobody listens at 127.0.0.1:");
        await Expect(screen["trouble-nothing_listens"]).ToContainTextAsync("start it");
        screen.IsClean();

        await using var server = await TestPlant.StartAsync();
        await using var other = await chromium.OpenAsync(server.Address, 390);
        await other.GoAsync("record");
        await Expect(other["broker-state"]).ToContainTextAsync("Embedded broker listening (127.0.0.1:");
        other.IsClean();
    }

    [BrowserFact]
    public async Task What_people_wrote_stands_there_in_words_with_who_and_of_one_kind_alone()
    {
        await using var server = await TestPlant.StartAsync();
        Assert.True((await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "no stroke", "diaphragm replaced", JobState.Done, null, "T. Wren"))).IsSuccessStatusCode);
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.9, TestMethod.Photometer)))).IsSuccessStatusCode);
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("record");
        await Expect(screen["entry-jobs"]).ToContainTextAsync("Main pool, Acid pump: Job done: diaphragm replaced (T. Wren)");
        await Expect(screen["entry-exceptions"]).ToContainTextAsync("pH, a breach begins");
        await screen["entries-about"].SelectOptionAsync("exceptions");
        await Expect(screen["entry-jobs"]).ToHaveCountAsync(0);
        await screen["entries-about"].SelectOptionAsync("reagents");
        await Expect(screen["no-entries"]).ToHaveTextAsync("Nothing was written in this time.");
        screen.IsClean();
    }
}
