using PlantWatch.Browser.Tests.Browser;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests.Journeys;

/// <summary>The engineer would like another limit, and sees first what it would have meant.</summary>
public sealed class LimitJourneyTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task A_changed_limit_is_replayed_before_it_is_used()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("limits");

        var journey = new Journey(screen, "a changed limit replayed before it is used");
        await journey.TapAsync("nav-more");
        await journey.TapAsync("more-what-if-limits");
        await journey.ChooseAsync("field-pool", "main");
        await journey.ChooseAsync("field-measurand", "free_chlorine");
        await journey.FillAsync("field-low", "1.8");
        await journey.FillAsync("field-from", "1");
        await journey.TapAsync("replay");
        await Expect(screen["answer"]).ToContainTextAsync("1 more; none that asked for closing was lost");
        await Expect(screen["plant-lines"]).ToContainTextAsync("low: 1.8");
        journey.CostsWhatIsListed();
        screen.IsClean();
    }
}
