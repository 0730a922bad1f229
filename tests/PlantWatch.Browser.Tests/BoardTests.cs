using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Boards as people use them: picked from the list, changed in their file, broken and mended while they are looked at.</summary>
public sealed class BoardTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    [BrowserFact]
    public async Task A_board_is_picked_from_the_list_and_shows_what_its_file_says_in_that_order()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.GoAsync("boards");
        await screen["board-maintenance"].GetByRole(Microsoft.Playwright.AriaRole.Link).ClickAsync();
        await Expect(screen["board"]).ToHaveAttributeAsync("data-board", "maintenance");
        Assert.Equal(["jobs", "alarms", "pumps", "probes", "strip", "strip", "notes", "notes"], await screen.AskAsync<string[]>("() => [...document.querySelectorAll('.tile')].map(t => t.dataset.show)"));
        await Expect(screen["board-job-hypo-pump"]).ToContainTextAsync("foot valve");
        // What wants care stands first.
        await Expect(screen.Page.Locator(".k-probes .probe-line").First).Not.ToContainTextAsync("Good");
        await Expect(screen["tile-4"]).ToContainTextAsync("The plant has no such probe");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_board_of_one_pool_shows_that_pool_and_the_address_keeps_the_choice()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.GoAsync("board/one-pool");
        await Expect(screen["strip-ph"].First).ToBeVisibleAsync();
        await Expect(screen["strip-teaching-ph"]).ToHaveCountAsync(0);
        await screen["board-pool"].SelectOptionAsync("teaching");
        await Expect(screen["strip-teaching-ph"].First).ToBeVisibleAsync();
        await Expect(screen["strip-ph"]).ToHaveCountAsync(0);
        await Expect(screen["line-acid-pump"]).ToHaveCountAsync(0);
        Assert.EndsWith("#/board/one-pool/teaching", screen.Page.Url, StringComparison.Ordinal);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_board_of_the_plant_appears_by_itself_tells_where_it_is_wrong_and_is_mended_while_it_is_shown()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 60);
        await using var screen = await chromium.OpenAsync(server.Address, width: 390);
        await screen.GoAsync("boards");
        var file = Path.Combine(Directory.CreateDirectory(Path.Combine(server.Folder, "boards")).FullName, "spa.board.yaml");
        const string good = "title: Spa\nfor: operator\ntiles:\n  - { show: readout, of: [teaching-orp, teaching-hp] }\n  - { show: clock }\n";
        await File.WriteAllTextAsync(file, good);
        await Expect(screen["problems-spa"]).ToHaveTextAsync("1 problem");
        await screen.GoAsync("board/spa");
        await Expect(screen["readout-teaching-orp"]).ToContainTextAsync("760");
        await Expect(screen["tile-problems"]).ToHaveTextAsync("Not shown: the plant file has no probe 'teaching-hp'; did you mean 'teaching-ph'?");

        await File.WriteAllTextAsync(file, good.Replace("clock", "cloc", StringComparison.Ordinal));
        await Expect(screen["board-errors"]).ToContainTextAsync("spa.board.yaml, line 5 tiles[1].show: expected one of");
        await Expect(screen["board-errors"]).ToContainTextAsync("last good version");
        await Expect(screen["tile-1"]).ToHaveAttributeAsync("data-show", "clock");

        await File.WriteAllTextAsync(file, good.Replace("teaching-hp", "teaching-ph", StringComparison.Ordinal));
        await Expect(screen["readout-teaching-ph"]).ToBeVisibleAsync();
        await Expect(screen["board-errors"]).ToHaveCountAsync(0);
        await Expect(screen["tile-problems"]).ToHaveCountAsync(0);

        File.Delete(file);
        // Where it was looked at it is gone by itself, and so is its line in the list.
        await Expect(screen.Page.GetByText("There is no such board.")).ToBeVisibleAsync();
        screen.IsClean(expected: c => c.Contains("404", StringComparison.Ordinal));
    }
}
