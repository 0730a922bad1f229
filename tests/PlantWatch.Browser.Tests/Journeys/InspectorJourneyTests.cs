using System.Text;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests.Journeys;

/// <summary>An inspector stands at the desk and would like to see the month.</summary>
public sealed class InspectorJourneyTests(Chromium chromium, BusyPlant plant) : IClassFixture<Chromium>, IClassFixture<BusyPlant>
{
    [BrowserFact]
    public async Task A_month_is_shown_to_an_inspector_and_handed_over_as_a_file()
    {
        await using var screen = await chromium.OpenAsync(await plant.AddressAsync());
        await screen.GoAsync();

        var journey = new Journey(screen, "an inspector's month, seen and taken along");
        await journey.TapAsync("nav-more");
        await journey.TapAsync("more-paper");
        await journey.TapAsync("to-inspect");
        await journey.FillAsync("field-by", "P. Linden, inspector");
        await journey.TapAsync("inspect-show");
        await Expect(screen["inspect-view"]).ToContainTextAsync("Main pool");
        await Expect(screen["inspect-view"]).ToContainTextAsync("1.30");
        var file = await screen.Page.RunAndWaitForDownloadAsync(() => journey.TapAsync("inspect-pdf"));
        await using var pdf = await file.CreateReadStreamAsync();
        var head = new byte[5];
        await pdf.ReadExactlyAsync(head);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(head));
        journey.CostsWhatIsListed();
        screen.IsClean();
    }
}
