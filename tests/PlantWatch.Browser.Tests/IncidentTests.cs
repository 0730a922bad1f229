using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A contamination incident on the phone of whoever stands at the pool: declared, counted by tests, paused, closed.</summary>
public sealed class IncidentTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 390;

    [BrowserFact]
    public async Task An_incident_is_declared_moved_by_tests_paused_by_pH_and_closed_by_a_person()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await using var wall = await chromium.OpenAsync(server.Address);
        await wall.GoAsync();
        await phone.GoAsync("incident/main");

        // Nothing is chosen beforehand; an empty form says what it lacks.
        await phone["submit-incident"].ClickAsync();
        await Expect(phone["error-kind"]).ToBeVisibleAsync();
        await phone["kind-diarrhoeal_stool"].CheckAsync();
        await Expect(phone["declare-form"]).ToContainTextAsync("from memory: read the document before you rely on it");
        await phone["authority-us_cdc"].CheckAsync();
        await phone["when-earlier"].CheckAsync();
        var now = WholeServer.Now;
        await phone["field-happened"].FillAsync(OnTheWall(now - TimeSpan.FromMinutes(125)));
        await phone.TypeAsync("field-incident-by", "R. Castellan");
        await phone["submit-incident"].ClickAsync();
        await Expect(phone["incident"]).ToContainTextAsync("Closed to bathers");
        await Expect(phone["hold"]).ToHaveAttributeAsync("data-word", "refused");
        await Expect(phone["hold"].GetByTestId("hold-why")).ToContainTextAsync("Test cyanuric acid first");
        // Every pool of the same water is closed, on every screen.
        await Expect(wall["state-main"]).ToHaveTextAsync("Stop");
        await Expect(wall["pool-teaching"]).ToContainTextAsync("shares its water with Main pool");

        await Expect(phone["hold-teaching"]).ToHaveAttributeAsync("data-word", "refused");
        await Expect(phone["said-hold"]).ToContainTextAsync("No limit pack is picked");
        await TestAsync(server, now - TimeSpan.FromMinutes(120), SamplePoint.Pool, "", new TestResult(Measurand.CyanuricAcid, 0, TestMethod.Photometer));
        await Expect(phone["hold"]).ToHaveAttributeAsync("data-word", "not_started");
        await TestAsync(server, now - TimeSpan.FromMinutes(110), SamplePoint.Pool, "shallow end", Chlorine(20));
        await TestAsync(server, now - TimeSpan.FromMinutes(105), SamplePoint.Pool, "stairs", Chlorine(20));
        await LowestAsync(server, now - TimeSpan.FromMinutes(100), 20, 7.4);
        await LowestAsync(server, now - TimeSpan.FromMinutes(50), 20, 7.4);
        // 50 minutes at 20 mg/L; 14,300 are left, 715 minutes at 20.
        await Expect(phone["hold"]).ToHaveAttributeAsync("data-word", "running");
        await Expect(phone["hold-done"]).ToContainTextAsync("1\u202f000 of 15\u202f300");
        await Expect(phone["hold-left"]).ToHaveTextAsync("11 h 55 min");

        await LowestAsync(server, now - TimeSpan.FromMinutes(20), 20, 7.8);
        await Expect(phone["hold"]).ToHaveAttributeAsync("data-word", "paused");
        await Expect(phone["hold"].GetByTestId("hold-why")).ToContainTextAsync("pH 7.80 is above 7.50");
        await Expect(phone["hold-done"]).ToContainTextAsync("1\u202f000 of");
        await LowestAsync(server, now - TimeSpan.FromMinutes(10), 20, 7.4);
        await Expect(phone["hold"]).ToHaveAttributeAsync("data-word", "running");
        await Expect(phone["hold-done"]).ToContainTextAsync("1\u202f000 of");

        await phone.TypeAsync("field-remark", "Circulation on, filters run");
        await phone["submit-remark"].ClickAsync();
        await Expect(phone["incident"]).ToContainTextAsync("Circulation on, filters run");

        await phone["close-incident"].Locator("summary").ClickAsync();
        await Expect(phone["not-reached"]).ToContainTextAsync("Main pool, Teaching pool");
        await phone["submit-close"].ClickAsync();
        await Expect(phone["error-close-why"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-close-why", "It was a leaf; looked at by two");
        await phone["submit-close"].ClickAsync();
        await Expect(phone["closed-incidents"]).ToContainTextAsync("It was a leaf; looked at by two");
        await Expect(phone["closed-incidents"]).ToContainTextAsync("6 % of the hold proven");
        // The other pool of the water was not held at all, and that is in the record too.
        await Expect(phone["closed-incidents"]).ToContainTextAsync("Teaching pool: 0 % of the hold proven");
        await Expect(phone["declare-form"]).ToBeVisibleAsync();
        await Expect(wall["pool-teaching"]).Not.ToContainTextAsync("shares its water");
        phone.IsClean();
        wall.IsClean();
    }

    // The hall's clock on the wall, as a field of the page takes it.
    private static string OnTheWall(Instant at) =>
        TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), TimeZoneInfo.FindSystemTimeZoneById("Europe/London")).ToString("yyyy-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    private static Task LowestAsync(WholeServer server, Instant at, double chlorine, double ph) => TestAsync(
        server, at, SamplePoint.Outlet, "", Chlorine(chlorine), new TestResult(Measurand.Ph, ph, TestMethod.Meter), new TestResult(Measurand.Temperature, 27, TestMethod.Meter));

    private static async Task TestAsync(WholeServer server, Instant at, SamplePoint point, string place, params TestResult[] results) => await WholeServer.ReadAsync<CheckAnswer>(
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(at, results) with { Point = point, Place = place.Length > 0 ? place : null }));

    private static TestResult Chlorine(double value) => new(Measurand.FreeChlorine, value, TestMethod.Photometer, Dilution: 10);
}
