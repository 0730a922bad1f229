using System.Text.RegularExpressions;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>From checks that find against a probe to a calibration in force, on the page of the probe.</summary>
public sealed class CalibrationTests(Chromium chromium) : IClassFixture<Chromium>
{
    [BrowserFact]
    public async Task An_offer_is_proposed_approved_by_an_engineer_and_raw_and_corrected_stand_side_by_side()
    {
        await using var server = await TestPlant.StartAsync();
        await CheckFourTimesAsync(server, "hall/ph");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("probe/ph");
        await Expect(screen["offer"]).ToHaveAttributeAsync("data-kind", "offset");
        await Expect(screen["judgements"]).ToContainTextAsync("The probe drifts");
        await screen.TypeAsync("field-propose-by", "R. Castellan");
        await screen["propose"].ClickAsync();

        await Expect(screen["decide"]).ToContainTextAsync("proposed by R. Castellan");
        await screen.TypeAsync("field-decide-by", "I. Brandvold");
        await screen["approve"].ClickAsync();
        await Expect(screen["error-decide-why"]).ToBeVisibleAsync();
        await screen.TypeAsync("field-decide-why", "two rounds of tests agree");
        await screen["approve"].ClickAsync();
        await Expect(screen["calibration"]).ToHaveAttributeAsync("data-status", "approved");
        await Expect(screen["calibration"]).ToContainTextAsync("Approved by I. Brandvold");
        await Expect(screen["decide"]).ToHaveCountAsync(0);

        // The raw reading stays what it was; what is believed moves by the offset.
        await server.PublishAsync("hall/ph", "7.90");
        var sideBySide = screen["probe-ph"].Locator(".side-by-side dd");
        await Expect(sideBySide.Nth(0)).ToHaveTextAsync("7.90");
        await Expect(sideBySide.Nth(1)).ToHaveTextAsync(Corrected);
        await Expect(screen["probe-ph"].GetByTestId("value-ph")).ToHaveTextAsync(Corrected);
        screen.IsClean();
    }

    [BrowserFact]
    public async Task What_the_panel_shows_is_put_right_on_the_panel_and_only_noted_here()
    {
        await using var server = await TestPlant.StartAsync();
        await CheckFourTimesAsync(server, "hall/panel");
        await using var screen = await chromium.OpenAsync(server.Address);
        await screen.GoAsync("probe/panel-ph");
        await Expect(screen["offer"]).ToHaveAttributeAsync("data-kind", "panel_adjustment");
        await screen.TypeAsync("field-propose-by", "R. Castellan");
        await screen["propose"].ClickAsync();
        await Expect(screen["approve"]).ToHaveCountAsync(0);
        await screen.TypeAsync("field-decide-by", "I. Brandvold");
        await screen["mark-adjusted"].ClickAsync();
        await Expect(screen["calibration"]).ToHaveAttributeAsync("data-status", "adjusted");
        await server.PublishAsync("hall/panel", "7.43");
        await Expect(screen["probe-panel-ph"].GetByTestId("value-panel-ph")).ToHaveTextAsync("7.43");
        screen.IsClean();
    }

    private static readonly Regex Corrected = new(@"^7\.4\d$");

    // The probe reads 7.90 where four tests find 7.40 to 7.43.
    private static async Task CheckFourTimesAsync(WholeServer server, string topic)
    {
        for (var i = 0; i < 4; i++)
        {
            await server.PublishLinesAsync(topic, Enumerable.Repeat("7.90", 20));
            var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.4 + (i * 0.01), TestMethod.Photometer));
            Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
        }
    }
}
