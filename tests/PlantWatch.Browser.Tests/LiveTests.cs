using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>From a device's publish to the eye, and what the page says while nobody publishes and nobody serves.</summary>
public sealed class LiveTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_published_value_appears_on_the_page_and_the_next_one_takes_its_place()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync();
        await Expect(screen["site-name"]).ToHaveTextAsync("Bramble Street Baths");
        await Expect(screen["value-ph"]).ToHaveTextAsync("\u2013");
        await server.PublishAsync("hall/ph", "7.41");
        await Expect(screen["value-ph"]).ToHaveTextAsync("7.41");
        await server.PublishAsync("hall/ph", "7.38");
        await Expect(screen["value-ph"]).ToHaveTextAsync("7.38");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_page_outlives_a_restart_of_the_server_and_says_meanwhile_that_it_is_not_live()
    {
        var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await server.PublishAsync("hall/ph", "7.41");
        await screen.GoAsync();
        await Expect(screen["value-ph"]).ToHaveTextAsync("7.41");
        await screen.AskAsync<int>("() => { window.neverLoadedAnew = 1; return 1; }");

        await server.StopAsync();
        await Expect(screen["not-live"]).ToBeVisibleAsync();
        await Expect(screen["life"]).ToHaveTextAsync("Not live");
        await Expect(screen["value-ph"]).ToHaveTextAsync("7.41");

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(screen["life"]).ToHaveTextAsync("Live");
            await Expect(screen["not-live"]).ToBeHiddenAsync();
            await server.PublishAsync("hall/ph", "7.36");
            await Expect(screen["value-ph"]).ToHaveTextAsync("7.36");
            Assert.Equal(1, await screen.AskAsync<int>("() => window.neverLoadedAnew ?? 0"));
            screen.IsClean(expected: NobodyThere);
        }
    }

    // While the server is away the browser itself notes each call that nobody answers.
    internal static bool NobodyThere(string complaint) =>
        complaint.Contains("ERR_CONNECTION_REFUSED", StringComparison.Ordinal) || complaint.Contains("WebSocket", StringComparison.Ordinal)
        || complaint.Contains("ERR_CONNECTION_RESET", StringComparison.Ordinal) || complaint.Contains("ERR_INCOMPLETE_CHUNKED_ENCODING", StringComparison.Ordinal);
}
