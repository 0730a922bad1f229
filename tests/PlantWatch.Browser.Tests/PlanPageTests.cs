using PlantWatch.Browser.Tests.Browser;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The plan page: nothing is planned before somebody says that the water is clear, and the bands are shown all the same.</summary>
public sealed class PlanPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_water_stands_against_its_bands_and_whether_bathers_are_in_decides_what_is_said()
    {
        await using var server = await BalancePageTests.TestedAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("plan/main");
        await Expect(phone["band-ph"]).ToContainTextAsync("7.40");
        await Expect(phone["band-saturation_index"]).ToContainTextAsync("common practice");
        await phone["plan-clear"].ClickAsync();
        await Expect(phone["plan-clear"]).ToBeCheckedAsync();
        await Expect(phone["plan-headline"]).Not.ToHaveTextAsync("Working it out\u2026");
        await Expect(phone["plan-always"]).ToContainTextAsync("Advice, not a command");
        phone.IsClean();
    }
}
