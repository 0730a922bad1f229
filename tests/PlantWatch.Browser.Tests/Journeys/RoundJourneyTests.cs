using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests.Journeys;

/// <summary>Seven in the morning, down at the water, and no signal there.</summary>
public sealed class RoundJourneyTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_morning_round_is_walked_without_signal_and_arrives_when_there_is_one()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("round");
        await Expect(phone["begin"]).ToBeVisibleAsync();
        await phone.Page.Context.SetOfflineAsync(true);

        var journey = new Journey(phone, "the morning round of one pool, without signal");
        await journey.FillAsync("field-round-who", "R. Castellan");
        await journey.TapAsync(phone["walk-main"].Locator("input"));
        await journey.TapAsync("begin");
        await journey.TapAsync("round-next");
        foreach (var (measurand, figure) in ((string, string)[])[("temperature", "28.2"), ("free_chlorine", "1.2"), ("total_chlorine", "1.6"), ("ph", "7.4")])
        {
            await Expect(phone["round"]).ToHaveAttributeAsync("data-screen", measurand);
            await journey.FillAsync($"field-{measurand}", figure);
            await journey.TapAsync("round-next");
        }

        await journey.TapAsync("field-bottom-yes");
        await journey.TapAsync("round-next");
        await journey.TapAsync("round-next");
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "unreachable");
        await phone.Page.Context.SetOfflineAsync(false);
        await phone.UntilAsync("() => !Object.keys(localStorage).some(k => k.startsWith('plantwatch.outbox.'))");
        Assert.Equal(4, Assert.Single(await server.ChecksAsync()).Check.Results.Length);
        journey.CostsWhatIsListed();
        phone.IsClean(c => c.Contains("ERR_INTERNET_DISCONNECTED", StringComparison.Ordinal) || LiveTests.NobodyThere(c));
    }
}
