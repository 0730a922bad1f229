using System.Globalization;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>The balance of a pool as it stands on its card and on its page.</summary>
public sealed class BalancePageTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task The_index_moves_when_the_probe_moves_and_says_how_far_it_may_be_off()
    {
        await using var server = await TestedAsync();
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("balance/main");
        await Expect(screen["verdict"]).ToContainTextAsync("balanced");
        await Expect(screen["verdict"]).ToContainTextAsync("\u00b1");
        var before = await IndexAsync(screen);
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.95", 20));
        await Expect(screen["input-ph"]).ToContainTextAsync("7.95");
        var after = await IndexAsync(screen);
        // A unit of pH is a unit of the index, nearly (reference pack, section 1): half a pH more must show as about half.
        Assert.InRange(after - before, 0.4, 0.65);
        await Expect(screen["index-speciated"]).ToContainTextAsync("by the method");
        await Expect(screen["index-handbook"]).ToBeVisibleAsync();
        await Expect(screen["indices-foreign"]).ToContainTextAsync("shown, not acted on");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task Each_input_says_where_it_comes_from_and_the_card_of_the_pool_leads_here()
    {
        await using var server = await TestedAsync();
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("pool/main");
        await Expect(phone["balance"]).ToContainTextAsync("balanced");
        await phone["to-balance"].ClickAsync();
        await Expect(phone["input-ph"]).ToContainTextAsync("probe");
        await Expect(phone["input-total_alkalinity"]).ToContainTextAsync("test");
        await Expect(phone["input-total_alkalinity"]).ToContainTextAsync("\u00b1");
        await Expect(phone["hocl"]).ToContainTextAsync("mg/L");
        await Expect(phone["water-balance"]).ToHaveAttributeAsync("aria-current", "page");
        phone.IsClean();
    }

    [BrowserFact]
    public async Task What_is_missing_is_said_and_what_can_be_worked_out_is()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.40");
        await SendAsync(server, new TestResult(Measurand.Temperature, 28, TestMethod.Meter), new TestResult(Measurand.FreeChlorine, 1.5, TestMethod.Photometer));
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("balance/main");
        await Expect(screen["balance-missing"]).ToContainTextAsync("total alkalinity");
        await Expect(screen["balance-missing"]).ToContainTextAsync("calcium hardness");
        await Expect(screen["verdict-index"]).ToHaveCountAsync(0);
        await Expect(screen["hocl"]).ToContainTextAsync("mg/L");
        screen.IsClean();
    }

    [BrowserFact]
    public async Task A_probe_that_the_tests_call_wrong_is_marked_beside_the_index()
    {
        await using var server = await TestedAsync(ph: "7.90");
        for (var i = 0; i < 4; i++)
        {
            await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.90", 20));
            await SendAsync(server, new TestResult(Measurand.Ph, 7.4 + (i * 0.01), TestMethod.Photometer));
        }

        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("balance/main");
        await Expect(screen["balance-remarks"]).ToContainTextAsync("which the tests support");
        await Expect(screen["input-ph"]).ToHaveAttributeAsync("data-suspect", "true");
        await Expect(screen["input-ph"]).ToContainTextAsync("in doubt");
        screen.IsClean();
    }

    internal static async Task<WholeServer> TestedAsync(string ph = "7.40")
    {
        var server = await TestPlant.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat(ph, 5));
        await SendAsync(
            server, new TestResult(Measurand.Temperature, 28, TestMethod.Meter), new TestResult(Measurand.TotalAlkalinity, 120, TestMethod.TabletCount),
            new TestResult(Measurand.CalciumHardness, 300, TestMethod.Photometer), new TestResult(Measurand.DissolvedSolids, 1000, TestMethod.Meter),
            new TestResult(Measurand.FreeChlorine, 1.5, TestMethod.Photometer));
        return server;
    }

    private static async Task SendAsync(WholeServer server, params TestResult[] results) =>
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, results))).IsSuccessStatusCode);

    private static async Task<double> IndexAsync(Screen screen) =>
        double.Parse((await screen["verdict-index"].InnerTextAsync()).Replace('\u2212', '-'), CultureInfo.InvariantCulture);
}
