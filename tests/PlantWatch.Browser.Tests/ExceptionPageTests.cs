using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A breach on a phone: what is owed is read, what was done is said, the test is entered, and the line is closed.</summary>
public sealed class ExceptionPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task An_operator_says_what_was_done_follows_the_link_to_the_test_and_finds_the_line_closed()
    {
        await using var server = await TestPlant.StartAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.Page.SetViewportSizeAsync(390, 844);
        await screen.GoAsync("exceptions");
        await Expect(screen["exceptions-open"]).ToContainTextAsync("Nothing stands open");
        await TestAsync(server, 7.9, minutesAgo: 20);
        await screen.GoAsync("exceptions/main");
        var line = screen["exception-main-ph"];
        await Expect(line).ToContainTextAsync("Main pool: pH");
        await Expect(line.GetByTestId("owed")).ToContainTextAsync("R. Castellan owes an action and a retest");
        await Expect(line.GetByTestId("mark-action")).ToHaveAttributeAsync("data-look", "waits");

        await line.GetByTestId("say-done").ClickAsync();
        await line.GetByTestId("save-note").ClickAsync();
        await Expect(line).ToContainTextAsync("Say what was done");
        await line.GetByLabel("What was done").FillAsync("acid pump primed");
        await line.GetByLabel("Your name").FillAsync("T. Wren");
        await line.GetByTestId("save-note").ClickAsync();
        await Expect(line.GetByTestId("mark-action")).ToContainTextAsync("T. Wren");
        await Expect(line.GetByTestId("owed")).ToContainTextAsync("T. Wren owes a retest");
        Assert.Equal(390, await screen.AskAsync<int>("() => document.documentElement.scrollWidth"));

        await line.GetByTestId("to-test").ClickAsync();
        await Expect(screen["field-pool"]).ToBeVisibleAsync();
        await TestAsync(server, 7.4);
        await screen.GoAsync("exceptions/main");
        await Expect(screen["exceptions-open"]).ToContainTextAsync("Nothing stands open");
        await Expect(line).ToHaveAttributeAsync("data-closing", "by_retest");
        await Expect(line.GetByTestId("mark-closed")).ToContainTextAsync("R. Castellan");
        await Expect(line).ToContainTextAsync("by a retest inside");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task The_pool_page_shows_what_stands_open_of_the_pool_and_leads_to_all_of_it()
    {
        await using var server = await TestPlant.StartAsync();
        await TestAsync(server, 7.9, minutesAgo: 1);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("pool/main");
        await Expect(screen["pool-exceptions"].GetByTestId("exception-main-ph")).ToBeVisibleAsync();
        await screen["pool-exceptions"].GetByText("All exceptions of this pool").ClickAsync();
        await Expect(screen["exceptions-pool"]).ToHaveValueAsync("main");
        await screen.GoAsync("pool/teaching");
        await Expect(screen["pool-teaching"]).ToBeVisibleAsync();
        await Expect(screen["pool-exceptions"]).ToHaveCountAsync(0);
        screen.IsClean();
    }

    private static async Task TestAsync(WholeServer server, double ph, double minutesAgo = 0)
    {
        var check = WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(minutesAgo), new TestResult(Measurand.Ph, ph, TestMethod.Meter));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
    }
}
