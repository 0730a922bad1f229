using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The plan page: nothing is planned before somebody says that the water is clear, and the bands are shown all the same.</summary>
public sealed class PlanPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_water_stands_against_its_bands_and_whether_bathers_are_in_decides_what_is_said()
    {
        await using var server = await BalancePageTests.TestedAsync();
        // The live probe reads pH as well; a plan rests on the test alone.
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer))));
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

    [BrowserFact]
    public async Task A_plan_has_steps_that_can_be_ticked_and_is_taken_back_while_somebody_is_in()
    {
        await using var server = await WholeServer.StartAsync(plant: DosePageTests.Yaml);
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(
            WholeServer.Now, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 0.3, TestMethod.Photometer),
            new TestResult(Measurand.Temperature, 28, TestMethod.Meter), new TestResult(Measurand.TotalAlkalinity, 100, TestMethod.Photometer),
            new TestResult(Measurand.CalciumHardness, 250, TestMethod.Photometer), new TestResult(Measurand.DissolvedSolids, 900, TestMethod.Meter))));
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("plan/main");
        await Expect(phone["plan-refused"]).ToContainTextAsync("bathers");
        await phone["plan-clear"].ClickAsync();
        await Expect(phone["step-0"].Locator(".name")).ToContainTextAsync("ypochlorite");
        await Expect(phone["step-0"]).ToContainTextAsync("h of circulation, and test");
        await phone["step-0"].Locator("input").CheckAsync();
        await Expect(phone["step-0"]).ToHaveClassAsync("ticked");
        Assert.Equal("", await phone.AskAsync<string>("() => document.documentElement.scrollWidth > innerWidth ? 'too wide' : ''"));
        await phone["plan-not-clear"].ClickAsync();
        await Expect(phone["plan-headline"]).ToHaveTextAsync("No plan is given yet");
        await Expect(phone["plan-steps"]).ToHaveCountAsync(0);
        phone.IsClean();
    }
}
