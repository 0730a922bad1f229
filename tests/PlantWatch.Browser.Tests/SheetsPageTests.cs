using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The page on which sheets for paper are asked for.</summary>
public sealed class SheetsPageTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    private static readonly string[] Ways = ["paper-open", "paper-pdf", "paper-csv", "paper-xlsx"];

    [BrowserFact]
    public async Task While_something_is_missing_there_is_no_address_of_a_sheet_and_the_button_says_what_it_is()
    {
        await using var phone = await chromium.OpenAsync(await plant.AddressAsync(), 390);
        await phone.GoAsync("paper");
        await Expect(phone["paper-open"]).ToBeVisibleAsync();
        await Expect(phone.Page.Locator("a[href*='/api/v1/sheets/']")).ToHaveCountAsync(0);
        await phone["paper-pdf"].ClickAsync();
        await Expect(phone["error-by"]).ToContainTextAsync("Say who prints it");

        await phone.TypeAsync("field-by", "R. Castellan");
        await Expect(phone["error-by"]).ToHaveCountAsync(0);
        foreach (var way in Ways) Assert.StartsWith("/api/v1/sheets/day-log.", await phone[way].GetAttributeAsync("href"), StringComparison.Ordinal);

        await phone["paper-pool-main"].UncheckAsync();
        await phone["paper-pool-teaching"].UncheckAsync();
        await Expect(phone.Page.Locator("a[href*='/api/v1/sheets/']")).ToHaveCountAsync(0);
        await Expect(phone["error-pools"]).ToContainTextAsync("Choose a pool");
        phone.IsClean();
    }
}
