using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>One dose: refused in words, then advised with everything beside it, then written down and answered by the retest.</summary>
public sealed class DosePageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string Confirmed = "{ by: M. Reed, on: \"2026-01-05\" }";

    private const string TooWide = "() => document.documentElement.scrollWidth > innerWidth ? `${document.documentElement.scrollWidth} px` : ''";

    /// <summary>The test plant with every volume confirmed.</summary>
    internal static readonly string Yaml = TestPlant.Yaml
        .Replace("volume_m3: 400", $"volume_m3: 400\n        volume_confirmed: {Confirmed}", StringComparison.Ordinal)
        .Replace("volume_m3: 60", $"volume_m3: 60\n        volume_confirmed: {Confirmed}", StringComparison.Ordinal)
        .Replace("balance_tank_m3: 25", $"balance_tank_m3: 25\n    balance_tank_confirmed: {Confirmed}", StringComparison.Ordinal);

    [BrowserFact]
    public async Task A_dose_is_refused_while_bathers_may_be_in_then_advised_written_down_and_answered()
    {
        await using var server = await WholeServer.StartAsync(plant: Yaml);
        await SendAsync(
            server, WholeServer.Now - TimeSpan.FromMinutes(200), new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 0.9, TestMethod.Photometer),
            new TestResult(Measurand.Temperature, 28, TestMethod.Meter), new TestResult(Measurand.TotalAlkalinity, 100, TestMethod.Photometer), new TestResult(Measurand.CalciumHardness, 250, TestMethod.Photometer));
        await using var phone = await chromium.OpenAsync(server.Address, 390);
        await phone.GoAsync("dose/main");
        await phone["field-product"].SelectOptionAsync("hypo");
        // The middle of the limits is where it is aimed at.
        await Expect(phone["field-value"]).ToHaveAttributeAsync("placeholder", "1.90");
        await Expect(phone["dose-refused"]).ToContainTextAsync("clear of bathers");

        await phone["clear-yes"].CheckAsync();
        await Expect(phone["dose-first"]).ToContainTextAsync("L");
        await Expect(phone["dose-equipment"]).ToContainTextAsync("Goggles");
        await Expect(phone["dose-precautions"]).ToContainTextAsync("chlorine gas");
        await Expect(phone["dose-retest"]).ToContainTextAsync("3.5 h");
        await Expect(phone["after-freeChlorine"]).ToContainTextAsync("0.90");
        Assert.Equal("", await phone.AskAsync<string>(TooWide));

        await phone.TypeAsync("field-amount", "3,2");
        await phone.TypeAsync("field-by", "R. Example");
        await phone["submit-dose"].ClickAsync();
        await Expect(phone["dose-kept"]).ToContainTextAsync("In the record");
        await Expect(phone["given"]).ToContainTextAsync("Sodium hypochlorite");
        await Expect(phone["given"]).ToContainTextAsync("No retest yet");
        var given = Assert.Single((await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Given);
        Assert.InRange(given.Dose.Kilograms, 3.5, 4.2);
        phone.IsClean();
    }

    [BrowserFact]
    public async Task A_dose_given_without_a_connection_goes_out_when_the_server_is_back()
    {
        var server = await WholeServer.StartAsync(plant: Yaml);
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("dose/main");
        await screen["field-product"].SelectOptionAsync("acid");
        await server.StopAsync();
        await screen.TypeAsync("field-amount", "2");
        await screen.TypeAsync("field-by", "R. Example");
        await screen["submit-dose"].ClickAsync();
        await Expect(screen["dose-waiting-here"]).ToContainTextAsync("2 L");
        await using var again = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await Expect(screen["given"]).ToContainTextAsync("Hydrochloric acid", new() { Timeout = 30_000 });
        await Expect(screen["dose-waiting-here"]).ToHaveCountAsync(0);
    }

    private static async Task SendAsync(WholeServer server, Instant at, params TestResult[] results) =>
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(at, results))).IsSuccessStatusCode);
}
