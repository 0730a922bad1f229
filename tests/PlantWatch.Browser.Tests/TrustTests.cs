using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>Which to believe, as the tester sees it at the poolside and the shift on the pool's page.</summary>
public sealed class TrustTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 390;

    [BrowserFact]
    public async Task After_a_test_against_the_probe_the_answer_says_what_to_do_next_and_both_ends_stay_in_view()
    {
        await using var server = await TestPlant.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.30", 20));
        await server.PublishLinesAsync("hall/panel", Enumerable.Repeat("7.32", 20));
        await using var phone = await chromium.OpenAsync(server.Address, Phone);
        await phone.GoAsync("check/main");
        await phone.TypeAsync("field-who", "R. Castellan");
        await phone.TypeAsync("field-ph", "7,85");
        // The panel is asked for where the pumps obey it; what is received stands beside it once it was read.
        await Expect(phone["beside-panel-ph"]).ToHaveCountAsync(0);
        await phone.TypeAsync("field-panel-panel-ph", "7,50");
        await Expect(phone["beside-panel-ph"]).ToContainTextAsync("7.32");
        await Expect(phone["beside-panel-ph"]).ToContainTextAsync("not the number that is received");
        await phone["submit-check"].ClickAsync();

        var story = phone["trust-story"];
        await Expect(story).Not.ToHaveAttributeAsync("data-answer", "all_agree");
        await Expect(phone["plausible"]).ToContainTextAsync("worse end");
        await Expect(phone["step-repeat_test"].First).ToContainTextAsync("7.85");
        await Expect(phone["test-by"]).ToContainTextAsync("Test by hand until");
        await story.Locator("summary").ClickAsync();
        await Expect(phone["side-panel-ph"]).ToContainTextAsync("7.50");
        await Expect(phone["side-panel-ph"]).ToContainTextAsync("differ");

        await phone.GoAsync("pool/main");
        await Expect(phone["trust-story"]).ToContainTextAsync("What to do next");
        phone.IsClean();
    }
}
