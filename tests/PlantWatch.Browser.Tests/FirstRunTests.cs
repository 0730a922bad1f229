using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Journeys;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Somebody with a phone, a server that knows nothing and a gateway that publishes: from nothing to the first value, with every slip on the way, and with an interruption.</summary>
public sealed class FirstRunTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task An_empty_plant_leads_by_the_hand_to_its_first_value_counted_in_taps()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-first-run-").FullName;
        await using var server = await WholeServer.StartAsync(folder, set: o => o.PlantFile = Path.Combine(folder, "ours.yaml"));
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync();

        var journey = new Journey(screen, "an empty plant to its first value");
        await journey.TapAsync("begin");

        await Expect(screen["field-zone"]).ToHaveValueAsync("Europe/London");
        await journey.FillAsync("field-name", "North Quay Pool");
        await journey.FillAsync("field-by", "R. Castellan");
        await journey.TapAsync("save-site");

        await journey.FillAsync("field-pool-name", "Main pool");
        await journey.ChooseAsync("field-kind", "swimming");
        await journey.ChooseAsync("field-setting", "indoor");
        await journey.ChooseAsync("field-disinfectant", "chlorine");
        await journey.FillAsync("field-volume", "425,5");
        await journey.TapAsync("save-pool");

        await Expect(screen["ear"]).ToBeVisibleAsync();
        await Expect(screen["heard"]).ToBeEmptyAsync();
        await server.PublishAsync("north-quay/ph", "7.41");
        await server.PublishAsync("north-quay/door", "open");
        await Expect(screen["topic-north-quay/ph"]).ToContainTextAsync("7.41");
        await Expect(screen["topic-north-quay/door"]).ToContainTextAsync("no probe can read it");
        await journey.TapAsync("take-north-quay/ph");
        await Expect(screen["field-measurand"]).ToHaveValueAsync("ph");
        await journey.TapAsync("origin-raw");
        await journey.TapAsync("save-probe");
        await Expect(screen["topic-north-quay/ph"]).ToContainTextAsync("read by pH");

        // Called away: what was said stands in the file, and a fresh look goes on where it was left.
        await screen.Page.ReloadAsync();
        await journey.TapAsync("probes-done");
        await journey.TapAsync("pack-who-2006");
        await journey.TapAsync("save-pack");
        await Expect(screen["first-value"]).ToContainTextAsync("Waiting");
        // The pack by its title and not by its key.
        await Expect(screen["step-pack"]).ToContainTextAsync("2006");
        await Expect(screen["step-pack"]).Not.ToContainTextAsync("who-2006");
        await server.PublishAsync("north-quay/ph", "7.43");
        await Expect(screen["first-value"]).ToContainTextAsync("The first value is there");
        await Expect(screen["value-main-pool-ph"]).ToHaveTextAsync("7.43");
        await Expect(screen["remains"]).ToContainTextAsync("Confirm the rows of the limit pack");
        await journey.TapAsync("to-overview");
        await Expect(screen["pool-main-pool"]).ToBeVisibleAsync();
        journey.CostsWhatIsListed();
        var text = await File.ReadAllTextAsync(Path.Combine(folder, "ours.yaml"));
        Assert.Contains("volume_m3: 425.5\n", text, StringComparison.Ordinal);
        Assert.StartsWith("# The plant as it is built.", text, StringComparison.Ordinal);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_plant_that_runs_has_its_first_steps_done_and_what_a_pump_says_of_itself_is_no_trouble()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.41");
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("start");
        foreach (var step in (string[])["site", "pool", "probe", "pack", "value"]) await Expect(screen[$"step-{step}"]).ToContainTextAsync("\u2713");
        await screen["step-probe"].GetByRole(AriaRole.Button).ClickAsync();
        await Expect(screen["ear"]).ToBeVisibleAsync();
        await server.PublishAsync("hall/acid/state", "running");
        await Expect(screen["topic-hall/acid/state"]).ToContainTextAsync("read by Acid pump");
        await Expect(screen["topic-hall/acid/state"]).Not.ToContainTextAsync("no probe can read it");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Wrong_input_is_told_beside_each_field_and_nothing_typed_is_lost()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-first-run-").FullName;
        await using var server = await WholeServer.StartAsync(folder, set: o => o.PlantFile = Path.Combine(folder, "ours.yaml"));
        await using var screen = await chromium.OpenAsync(server.Address, 390);
        await screen.GoAsync("start");
        await screen["save-site"].ClickAsync();
        foreach (var field in new[] { "name", "by" }) await Expect(screen[$"error-{field}"]).ToBeVisibleAsync();
        await screen["field-name"].FillAsync(new string('n', 101));
        await screen["field-by"].FillAsync("R. Castellan");
        await screen["save-site"].ClickAsync();
        await Expect(screen["error-name"]).ToContainTextAsync("100");
        Assert.False(File.Exists(Path.Combine(folder, "ours.yaml")));
        await screen["field-name"].FillAsync("North: \"Quay\" # 1");
        await screen["save-site"].ClickAsync();

        await screen["save-pool"].ClickAsync();
        foreach (var field in new[] { "pool-name", "kind", "setting", "disinfectant", "volume" }) await Expect(screen[$"error-{field}"]).ToBeVisibleAsync();
        await PoolAsync(screen, "Main pool", "4oo");
        await screen["field-turnover"].FillAsync("-1");
        await screen["save-pool"].ClickAsync();
        await Expect(screen["error-volume"]).ToBeVisibleAsync();
        await Expect(screen["error-turnover"]).ToBeVisibleAsync();
        await Expect(screen["error-kind"]).ToHaveCountAsync(0);
        await Expect(screen["field-volume"]).ToHaveValueAsync("4oo");
        await screen["field-volume"].FillAsync("400");
        await screen["field-turnover"].FillAsync("3.5");
        await screen["save-pool"].ClickAsync();
        await Expect(screen["ear"]).ToBeVisibleAsync();

        await server.PublishAsync("north-quay/ai-7", "7.41");
        await screen["take-north-quay/ai-7"].ClickAsync();
        await screen["field-every"].FillAsync("0");
        await screen["save-probe"].ClickAsync();
        foreach (var field in new[] { "measurand", "probe-name", "range", "every" }) await Expect(screen[$"error-{field}"]).ToBeVisibleAsync();
        await screen["field-measurand"].SelectOptionAsync("orp");
        await screen["field-range"].FillAsync("1000");
        await screen["save-probe"].ClickAsync();
        foreach (var field in new[] { "origin", "electrode", "range", "every" }) await Expect(screen[$"error-{field}"]).ToBeVisibleAsync();
        Assert.Equal("North: \"Quay\" # 1", (await server.GetAsync<Server.Api.SiteView>("/api/v1/site")).Name);
        screen.IsClean();
    }

    private static async Task PoolAsync(Screen screen, string name, string volume)
    {
        await screen["field-pool-name"].FillAsync(name);
        await screen["field-kind"].SelectOptionAsync("swimming");
        await screen["field-setting"].SelectOptionAsync("indoor");
        await screen["field-disinfectant"].SelectOptionAsync("chlorine");
        await screen["field-volume"].FillAsync(volume);
    }
}
