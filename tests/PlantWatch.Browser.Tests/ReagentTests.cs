using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A lot is noted by whoever opens it; the form of a test says when its reagent is out of date.</summary>
public sealed class ReagentTests(Chromium chromium) : IClassFixture<Chromium>
{
    private static readonly string Plant = TestPlant.Yaml.Replace("products:\n", "reagents:\n  - { id: dpd-1, name: DPD no. 1, tests: [free_chlorine], method: photometer }\nproducts:\n", StringComparison.Ordinal);

    [BrowserFact]
    public async Task An_old_lot_is_said_beside_the_field_and_gone_once_a_fresh_one_is_noted()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("reagents");
        await Expect(phone["reagent-dpd-1"]).ToContainTextAsync("no lot noted");
        await NoteAsync(phone, "26-41", DateTime.UtcNow.AddDays(-3));
        await Expect(phone["reagent-dpd-1"]).ToHaveAttributeAsync("data-word", "out_of_date");
        await phone.GoAsync("check/main");
        await Expect(phone["old-reagent-free_chlorine"]).ToContainTextAsync("DPD no. 1 is out of date");
        await Expect(phone["old-reagent-ph"]).ToHaveCountAsync(0);
        await phone.GoAsync();
        await Expect(phone["due-reagents"]).ToContainTextAsync("DPD no. 1 is out of date");
        await phone.GoAsync("reagents");
        await NoteAsync(phone, "27-03", DateTime.UtcNow.AddYears(1));
        await Expect(phone["reagents-said"]).ToContainTextAsync("Lot 27-03 of DPD no. 1 is noted");
        await Expect(phone["reagent-dpd-1"]).ToHaveAttributeAsync("data-word", "in_date");
        await phone.GoAsync("check/main");
        await Expect(phone["field-free_chlorine"]).ToBeVisibleAsync();
        await Expect(phone["old-reagent-free_chlorine"]).ToHaveCountAsync(0);
    }

    private static async Task NoteAsync(Screen phone, string lot, DateTime lastDay)
    {
        await phone["note-lot-dpd-1"].ClickAsync();
        await phone["submit-lot"].ClickAsync();
        await Expect(phone["error-lot"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-lot", lot);
        await phone["field-lastDay"].FillAsync(lastDay.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        await phone.TypeAsync("field-lot-by", "R. Castellan");
        await phone["submit-lot"].ClickAsync();
        await Expect(phone["lot-form-dpd-1"]).ToHaveCountAsync(0);
    }
}
