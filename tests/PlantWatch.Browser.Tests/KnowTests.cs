using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Help in place: every number says where it comes from, how old it is and how sure it is, and every index has its source.</summary>
public sealed class KnowTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task Every_number_of_the_pools_and_of_the_balance_is_asked_by_keyboard_and_answers()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 60);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(20), Tested(Measurand.Ph, 7.42), Tested(Measurand.FreeChlorine, 1.4), Tested(Measurand.TotalChlorine, 1.7),
            Tested(Measurand.TotalAlkalinity, 110), Tested(Measurand.CalciumHardness, 240), Tested(Measurand.DissolvedSolids, 900), Tested(Measurand.Temperature, 28)) with { PoolId = "teaching" });
        await using var screen = await chromium.OpenAsync(server.Address);
        foreach (var (route, asked) in new[] { ("", new[] { "teaching-ph", "teaching-orp", "teaching-free_chlorine", "teaching-combined_chlorine", "teaching-balance" }), ("pool/teaching", ["teaching-ph", "test-ph", "test-combined_chlorine", "balance", "hocl"]), ("balance/teaching", ["verdict", "index-speciated", "index-handbook", "chlorine"]) })
        {
            await screen.GoAsync(route);
            foreach (var number in asked)
            {
                var sign = screen[$"know-{number}"].First;
                await Expect(sign).ToBeVisibleAsync();
                var box = await sign.BoundingBoxAsync();
                Assert.True(box is { Width: >= 24, Height: >= 24 }, $"{route} {number} is a target of {box?.Width} by {box?.Height}");
                await sign.FocusAsync();
                await screen.Page.Keyboard.PressAsync("Enter");
                var answer = screen[$"known-{number}"];
                foreach (var part in new[] { "Where from", "How old", "How sure", "Source" }) await Expect(answer).ToContainTextAsync(part);
                await screen.Page.Keyboard.PressAsync("Escape");
                await Expect(answer).ToHaveCountAsync(0);
                await Expect(sign).ToBeFocusedAsync();
            }
        }

        screen.IsClean();
    }

    private static TestResult Tested(Measurand measurand, double value) => new(measurand, value, TestMethod.Photometer);
}
