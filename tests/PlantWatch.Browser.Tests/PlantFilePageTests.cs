using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The plant file on its page: problems by line, what a change does before it is saved, and nothing typed that is lost.</summary>
public sealed class PlantFilePageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly string Plant = "# ours\n" + TestPlant.Yaml.ReplaceLineEndings("\n") + "\n";

    [BrowserFact]
    public async Task A_text_is_changed_seen_through_saved_and_a_draft_outlives_a_reload_and_somebody_elses_change()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("plant-file");
        await screen["as-text"].ClickAsync();
        var field = screen["field-plant-text"];
        await Expect(field).ToHaveValueAsync(Plant);
        await field.FillAsync(Plant.Replace("volume_m3: 400", "volume_m3: big", StringComparison.Ordinal));
        await Expect(screen["plant-problems"]).ToContainTextAsync("expected a number above 0 (m3), found 'big'");
        await Expect(screen["save-file"]).ToBeDisabledAsync();
        await screen["plant-problems"].GetByRole(Microsoft.Playwright.AriaRole.Button).ClickAsync();
        Assert.Equal("          volume_m3: big", await screen.AskAsync<string>("() => { const a = document.activeElement; return a.value.slice(a.selectionStart, a.selectionEnd); }"), ignoreAllWhiteSpace: true);

        await field.FillAsync(Plant.Replace("volume_m3: 400", "volume_m3: 410  # measured", StringComparison.Ordinal));
        await Expect(screen["file-effects"]).ToContainTextAsync("410");
        await screen.Page.ReloadAsync();
        await Expect(screen["file-diff"]).ToContainTextAsync("# measured");

        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), Plant.Replace("# ours", "# theirs", StringComparison.Ordinal));
        await screen["field-by"].FillAsync("R. Castellan");
        await screen["save-file"].ClickAsync();
        await Expect(screen["file-conflict"]).ToBeVisibleAsync();
        await Expect(screen["file-diff"]).ToContainTextAsync("# theirs");
        await screen["mine-over"].ClickAsync();
        await screen["save-file"].ClickAsync();
        await Expect(screen["file-saved"]).ToContainTextAsync("in force");
        Assert.Contains("# ours", await File.ReadAllTextAsync(Path.Combine(server.Folder, "plant.yaml")), StringComparison.Ordinal);
        Assert.Equal(410, (await server.GetAsync<Server.Api.SiteView>("/api/v1/site")).Circuits[0].Pools[0].VolumeM3);
        screen.IsClean(expected: c => c.Contains("412", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task A_form_made_from_the_schema_writes_the_same_file_and_tells_what_is_wrong_beside_the_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("plant-file");
        foreach (var part in new[] { "circuits", "circuits[0]", "circuits[0].pools", "circuits[0].pools[1]" }) await screen[$"part-{part}"].Locator("> summary").ClickAsync();
        const string volume = "circuits[0].pools[1].volume_m3";
        await screen[$"field-{volume}"].FillAsync("big");
        await screen[$"field-{volume}"].BlurAsync();
        await Expect(screen[$"error-{volume}"]).ToContainTextAsync("expected a number above 0 (m3), found 'big'");
        await Expect(screen["save-file"]).ToBeDisabledAsync();
        await screen[$"field-{volume}"].FillAsync("61,5");
        await screen[$"field-{volume}"].BlurAsync();
        await Expect(screen[$"error-{volume}"]).ToHaveCountAsync(0);

        await screen["part-people"].Locator("> summary").ClickAsync();
        await screen["add-people"].ClickAsync();
        await screen["part-people[0]"].Locator("> summary").ClickAsync();
        await Expect(screen["error-people[0].name"]).ToContainTextAsync("is missing");
        await screen["field-people[0].name"].FillAsync("I. Brandvold");
        await screen["field-people[0].name"].BlurAsync();
        await screen["field-people[0].role"].SelectOptionAsync("engineer");
        await Expect(screen["file-effects"]).ToContainTextAsync("People of circuit hall changed");
        await screen["field-by"].FillAsync("R. Castellan");
        await screen["save-file"].ClickAsync();
        await Expect(screen["file-saved"]).ToContainTextAsync("in force");
        var expected = Plant.Replace("volume_m3: 60", "volume_m3: 61.5", StringComparison.Ordinal)
            .Replace("  time_zone: Europe/London\n", "  time_zone: Europe/London\npeople:\n  - id: person-1\n    name: I. Brandvold\n    role: engineer\n", StringComparison.Ordinal);
        Assert.Equal(expected, (await File.ReadAllTextAsync(Path.Combine(server.Folder, "plant.yaml"))).Replace("  - { id: person-1, name: I. Brandvold, role: engineer }", "  - id: person-1\n    name: I. Brandvold\n    role: engineer", StringComparison.Ordinal));
        screen.IsClean();
    }
}
