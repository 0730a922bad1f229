using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The plant round and the instruments, on a phone in a cellar.</summary>
public sealed class PlantRoundPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly string Plant = TestPlant.Yaml.Replace("circuits:\n", """
        instruments:
          - { id: photo, name: Photometer, tests: [free_chlorine, ph] }
        circuits:

        """, StringComparison.Ordinal);

    [BrowserFact]
    public async Task A_round_typed_without_a_server_lies_on_the_phone_and_says_what_was_found_when_it_is_back()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("plant-round");
        await Expect(phone["round-stands"]).ToContainTextAsync("nobody has walked it yet");
        await phone["save-plant-round"].ClickAsync();
        await Expect(phone["error-form"]).ToContainTextAsync("Read at least one thing");
        await server.StopAsync();
        await Expect(phone["not-live"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-item-balance_tank", "72,5");
        await phone["item-eyewash-no"].CheckAsync();
        await phone.TypeAsync("remark-eyewash", "no water");
        await phone.TypeAsync("field-round-by", "R. Castellan");
        // The phone is put away in between: what was typed stays.
        await phone["nav-overview"].ClickAsync();
        await phone.Page.GoBackAsync();
        await Expect(phone["field-item-balance_tank"]).ToHaveValueAsync("72,5");
        await phone["save-plant-round"].ClickAsync();
        await Expect(phone["round-answer"]).ToHaveAttributeAsync("data-outcome", "unreachable");

        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(phone["round-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
            await Expect(phone["says-eyewash"]).ToContainTextAsync("nobody works with chemicals here until it is");
            await phone["round-again"].ClickAsync();
            await Expect(phone["round-stands"]).ToContainTextAsync("R. Castellan");
            Assert.Single((await server.GetAsync<EntriesView>("/api/v1/entries?about=rounds")).Entries);
            phone.IsClean(expected: LiveTests.NobodyThere);
        }
    }

    [BrowserFact]
    public async Task What_no_gauge_can_show_is_said_of_all_fields_at_once_and_a_failed_save_leads_to_the_first()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("plant-round");
        await phone.TypeAsync("field-item-balance_tank", "725");
        await Expect(phone["error-item-balance_tank"]).ToContainTextAsync("0 to 200 %");
        await phone.TypeAsync("field-item-make_up_meter", "-5");
        await phone["save-plant-round"].ClickAsync();
        await Expect(phone["mend-line"]).ToContainTextAsync("3 fields");
        await Expect(phone["field-item-balance_tank"]).ToBeFocusedAsync();
        await phone.TypeAsync("field-item-balance_tank", "72,5");
        await Expect(phone["mend-line"]).ToContainTextAsync("2 fields");
        await phone.TypeAsync("field-item-make_up_meter", "4321,5");
        await phone.TypeAsync("field-round-by", "R. Castellan");
        await phone["save-plant-round"].ClickAsync();
        await Expect(phone["round-answer"]).ToHaveAttributeAsync("data-outcome", "answered");

        // Pools of 460 m3 take no 10 000 m3 in a day.
        await phone["round-again"].ClickAsync();
        await phone.TypeAsync("field-item-make_up_meter", "14321,5");
        await Expect(phone["quiet-make_up_meter"]).ToContainTextAsync("10000 m\u00b3 more than before");
        await phone.TypeAsync("field-item-make_up_meter", "4231,5");
        await Expect(phone["quiet-make_up_meter"]).ToContainTextAsync("less than before");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task An_instrument_is_held_against_a_standard_and_says_while_typing_whether_it_is_in_order()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var phone = await chromium.OpenAsync(server.Address, width: 390);
        await phone.GoAsync("instruments");
        await Expect(phone["stands-free_chlorine"]).ToHaveAttributeAsync("data-word", "not_verified");
        await phone["verify-photo"].ClickAsync();
        await phone.TypeAsync("field-standard", "glass 2");
        await phone.TypeAsync("field-nominal", "1,00");
        await phone.TypeAsync("field-tolerance", "0,10");
        await phone.TypeAsync("field-reading", "1,05");
        await Expect(phone["verify-preview"]).ToContainTextAsync("within tolerance");
        await phone.TypeAsync("field-reading", "1,40");
        await Expect(phone["verify-preview"]).ToContainTextAsync("outside tolerance");
        await phone.TypeAsync("field-verify-by", "R. Castellan");
        await phone["submit-verify"].ClickAsync();
        await Expect(phone["stands-free_chlorine"]).ToHaveAttributeAsync("data-word", "failed");
        await Expect(phone["verify-said"]).ToContainTextAsync("outside tolerance");
        phone.IsClean();
    }
}
