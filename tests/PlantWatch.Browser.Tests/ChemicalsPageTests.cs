using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A delivery on a phone: two names, the right tank, and what the page says when it is the wrong one.</summary>
public sealed class ChemicalsPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_delivery_is_written_down_by_two_and_stands_in_the_store_and_in_the_record()
    {
        await using var server = await WholeServer.StartAsync(plant: TestPlant.Yaml);
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("chemicals");
        await Expect(phone["store-hypo"]).ToHaveTextAsync("never counted");
        await phone["open-delivered"].ClickAsync();
        await phone["submit-move"].ClickAsync();
        foreach (var field in new[] { "productId", "pumpId", "amount", "by", "checkedBy" }) await Expect(phone[$"error-{(field == "by" ? "move-by" : field)}"]).ToBeVisibleAsync();
        await phone["field-productId"].SelectOptionAsync("hypo");
        await phone["field-pumpId"].SelectOptionAsync("store");
        await phone.TypeAsync("field-amount", "200");
        await phone.TypeAsync("field-containers", "8");
        await phone.TypeAsync("field-strength", "15");
        await phone.TypeAsync("field-batch", "B-17");
        await phone.TypeAsync("field-move-by", "R. Castellan");
        await phone.TypeAsync("field-checkedBy", "r. castellan");
        await phone["submit-move"].ClickAsync();
        await Expect(phone["error-checkedBy"]).ToContainTextAsync("Somebody else");
        await phone["field-checkedBy"].FillAsync("T. Wren");
        await phone["submit-move"].ClickAsync();
        await Expect(phone["chemicals-said"]).ToContainTextAsync("The delivery is written down");
        await Expect(phone["store-hypo"]).ToContainTextAsync("200");
        await Expect(phone["move-delivered"]).ToContainTextAsync("R. Castellan, read with T. Wren");
        await Expect(phone["move-delivered"]).ToContainTextAsync("15 % on the label, 12 % in the plant file");
        await phone.GoAsync("record");
        await Expect(phone.Page.GetByText("Delivered into the store: 200 L of Sodium hypochlorite")).ToBeVisibleAsync();
    }

    [BrowserFact]
    public async Task A_wrong_tank_stops_the_form_and_once_it_has_happened_raises_the_alarm_until_it_is_made_safe()
    {
        await using var server = await WholeServer.StartAsync(plant: TestPlant.Yaml);
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("chemicals");
        await phone["open-delivered"].ClickAsync();
        await phone["field-productId"].SelectOptionAsync("acid");
        await phone["field-pumpId"].SelectOptionAsync("hypo-pump");
        await Expect(phone["wrong-tank"]).ToContainTextAsync("STOP. Hydrochloric acid is not for the tank of");
        await phone["field-pumpId"].SelectOptionAsync("acid-pump");
        await Expect(phone["wrong-tank"]).ToHaveCountAsync(0);
        await phone["field-pumpId"].SelectOptionAsync("hypo-pump");
        await phone.TypeAsync("field-amount", "25");
        await phone.TypeAsync("field-move-by", "R. Castellan");
        await phone.TypeAsync("field-checkedBy", "T. Wren");
        await phone["submit-move"].ClickAsync();
        await Expect(phone["error-wentIn"]).ToBeVisibleAsync();
        await phone["went-in"].CheckAsync();
        await phone["submit-move"].ClickAsync();
        await Expect(phone["wrong-hypo-pump"]).ToContainTextAsync("chlorine gas");

        await phone.GoAsync("alarms");
        await phone["make-safe"].ClickAsync();
        foreach (var act in new[] { "roomLeft", "pumpsIsolated", "tankDealtWith" }) await phone[act].CheckAsync();
        await Expect(phone["bathersOut"]).ToHaveCountAsync(0);
        await phone["confirm-safe"].ClickAsync();
        await phone.GoAsync("chemicals");
        await Expect(phone["chemical-hypo"]).ToBeVisibleAsync();
        await Expect(phone["wrong-hypo-pump"]).ToHaveCountAsync(0);
    }

    [BrowserFact]
    public async Task Bathers_of_a_day_are_counted()
    {
        await using var server = await WholeServer.StartAsync(plant: TestPlant.Yaml);
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("chemicals");
        await phone["open-bathers"].ClickAsync();
        await phone["field-poolId"].SelectOptionAsync("main");
        await phone.TypeAsync("field-number", "some");
        await phone.TypeAsync("field-bathers-by", "R. Castellan");
        await phone["submit-bathers"].ClickAsync();
        await Expect(phone["error-number"]).ToBeVisibleAsync();
        await phone["field-number"].FillAsync("310");
        await phone["submit-bathers"].ClickAsync();
        await Expect(phone["bathers"]).ToContainTextAsync("310");
    }
}
