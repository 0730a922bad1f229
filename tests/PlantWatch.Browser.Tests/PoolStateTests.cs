using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A pool is closed and opened on the phone of whoever stands beside it.</summary>
public sealed class PoolStateTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 390;

    private const string People = "\npeople:\n  - { id: b, name: I. Brandvold, role: duty_manager }\n  - { id: c, name: R. Castellan, role: operator }\n";

    [BrowserFact]
    public async Task A_pool_is_closed_for_cause_kept_closed_by_lines_that_say_why_tested_and_opened_by_a_signature()
    {
        await using var server = await WholeServer.StartAsync(plant: TestPlant.Yaml + People);
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("pool/main");
        await Expect(phone["operation"]).ToHaveTextAsync("Nobody has said");

        await phone["act-closed"].ClickAsync();
        await phone["form-closed"].GetByLabel("Something was wrong").CheckAsync();
        await phone["submit-closed"].ClickAsync();
        await Expect(phone["error-state-why"]).ToBeVisibleAsync();
        await phone.TypeAsync("field-state-why", "Glass in the water");
        await phone.TypeAsync("field-state-by", "R. Castellan");
        await phone["submit-closed"].ClickAsync();
        await Expect(phone["operation"]).ToHaveTextAsync("Closed, for cause");
        await Expect(phone["signers"]).ToContainTextAsync("I. Brandvold");

        // The operator tries to open: first the signature is missing, then what nobody has tested.
        await OpenAsync(phone, "R. Castellan");
        await Expect(phone["form-open"]).ToContainTextAsync("R. Castellan is not named in the plant file");
        await phone["field-state-by"].FillAsync("I. Brandvold");
        await phone.TypeAsync("field-state-why", "Swept, and looked at by two");
        await phone["submit-open"].ClickAsync();
        await Expect(phone["form-open"]).ToContainTextAsync("pH: not tested");
        await Expect(phone["form-open"]).ToContainTextAsync("Nobody has said whether the bottom can be seen");
        await Expect(phone["gate-flow"]).ToContainTextAsync("was never heard");
        await Expect(phone["operation"]).ToHaveTextAsync("Closed, for cause");

        // The plant speaks again, and the line leads to the test that it asks for.
        await server.PublishPastAsync(3);
        await server.PublishLinesAsync("hall/ph", ["7.40"]);
        await server.PublishLinesAsync("hall/panel", ["7.40"]);
        await phone["gate-test.ph"].GetByRole(AriaRole.Link).ClickAsync();
        await phone.TypeAsync("field-who", "R. Castellan");
        await phone.TypeAsync("field-ph", "7,40");
        await phone.TypeAsync("field-free_chlorine", "1,5");
        await phone["field-bottom-yes"].CheckAsync();
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");

        await phone.GoAsync("pool/main");
        await Expect(phone["gate-test.ph"]).ToContainTextAsync("met: pH: 7.40");
        await OpenAsync(phone, "I. Brandvold", "Swept, and looked at by two");
        await Expect(phone["operation"]).ToHaveTextAsync("Open");
        await phone["state-before"].Locator("summary").ClickAsync();
        await Expect(phone["state-change-open"]).ToContainTextAsync("Swept, and looked at by two");

        await phone.GoAsync("record");
        await Expect(phone["record-states"]).ToContainTextAsync("Main pool: Closed \u2192 Open, said by I. Brandvold");
        await Expect(phone["record-states"]).ToContainTextAsync("Nobody has said \u2192 Closed, for cause, said by R. Castellan");
        phone.IsClean(expected: said => said.Contains("409", StringComparison.Ordinal));
    }

    private static async Task OpenAsync(Screen phone, string by, string? why = null)
    {
        await phone["act-open"].ClickAsync();
        await phone["field-state-by"].FillAsync(by);
        if (why is not null) await phone.TypeAsync("field-state-why", why);
        await phone["submit-open"].ClickAsync();
    }
}
