using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A filter is washed by whoever stands in the plant room with a phone.</summary>
public sealed class FilterTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly string Plant = TestPlant.Yaml
        .Replace("    turnover_hours: 3.5\n", "    turnover_hours: 3.5\n    filters:\n      - { id: f1, name: Filter 1, clean_kpa: 30, backwash_every_days: 7 }\n", StringComparison.Ordinal)
        .Replace("    pumps:\n", """
                  - { id: round, name: Circulation, measurand: circulation_flow, topic: hall/round, format: number, range: [-5, 300], every_seconds: 5 }
                  - { id: across, name: Pressure, measurand: filter_pressure, filter: f1, topic: hall/across, format: number, range: [-20, 300], every_seconds: 5 }
                pumps:

            """, StringComparison.Ordinal);

    [BrowserFact]
    public async Task A_backwash_is_begun_and_the_wash_noted_by_name()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PublishAsync("hall/round", "80");
        await server.PublishAsync("hall/across", "71");
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("pumps");
        await Expect(phone["filter-hall-f1"]).ToContainTextAsync("71 kPa across it, clean 30 kPa; risen by 41, a wash is due at 50");
        await Expect(phone["circulation-hall"]).ToHaveAttributeAsync("data-low", "true");

        await phone["backwash-hall-f1"].ClickAsync();
        await phone["submit-wash"].ClickAsync();
        await Expect(phone["wash-form-hall-f1"]).ToContainTextAsync("Say who you are");
        await phone.TypeAsync("field-wash-by-hall-f1", "R. Castellan");
        await phone["submit-wash"].ClickAsync();
        await Expect(phone["backwash-now-hall-f1"]).ToContainTextAsync("Being backwashed by R. Castellan");
        await Expect(phone["filters-said"]).ToContainTextAsync("Filter 1: backwash begun");

        await phone["washed-hall-f1"].ClickAsync();
        await phone["submit-wash"].ClickAsync();
        await Expect(phone["filters-said"]).ToContainTextAsync("The wash of Filter 1 is noted");
        await Expect(phone["filter-hall-f1"]).ToHaveAttributeAsync("data-backwash", "false");
        await Expect(phone["filter-hall-f1"]).ToContainTextAsync("by R. Castellan");
    }
}
