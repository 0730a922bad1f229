using System.Collections.Concurrent;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Browser.Tests.Plant;
using PlantWatch.Server.Tests.Whole;
using static PlantWatch.Browser.Tests.Browser.Screen;

namespace PlantWatch.Browser.Tests;

/// <summary>A phone without signal: opened from cold, with the server really gone, and what it kept when it is back.</summary>
public sealed class OfflineTests(Chromium chromium) : IClassFixture<Chromium>, IDisposable
{
    private readonly string _phone = Directory.CreateTempSubdirectory("plantwatch-phone-").FullName;

    public void Dispose() => Directory.Delete(_phone, recursive: true);

    [BrowserFact]
    public async Task From_cold_without_a_server_the_round_is_walked_and_its_check_is_kept_once_when_the_server_is_back()
    {
        var server = await TestPlant.StartAsync();
        await server.PublishAsync("hall/ph", "7.41");
        await using (var phone = await chromium.OpenPhoneAsync(_phone, server.Address))
        {
            await phone.GoAsync();
            await Expect(phone["value-ph"]).ToHaveTextAsync("7.41");
            await PutOnDeviceAsync(phone);
        }

        await server.StopAsync();
        await using (var phone = await chromium.OpenPhoneAsync(_phone, server.Address))
        {
            await phone.Page.GotoAsync("/");
            await Expect(phone["not-live"]).ToContainTextAsync("As last heard at");
            await Expect(phone["value-ph"]).ToHaveTextAsync("7.41");
            Assert.NotEqual("none", await phone.AskAsync<string>("() => getComputedStyle(document.querySelector('[data-testid=state-main]')).backgroundImage"));
            // The interface itself is never answered from what was kept.
            Assert.Equal("failed", await phone.AskAsync<string>("() => fetch('/api/v1/site').then(r => 'answered ' + r.status, () => 'failed')"));
            await phone.Page.GotoAsync("/#/round");
            await RoundTests.BeginAsync(phone, "main");
            await phone["round-next"].ClickAsync();
            await RoundTests.TestAsync(phone, "temperature", "28,2");
            await RoundTests.TestAsync(phone, "free_chlorine", "0,2");
            for (var i = 0; i < 4; i++) await phone["round-next"].ClickAsync();
            await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "unreachable");
            await Expect(phone["held-here"]).ToContainTextAsync("Free chlorine 0.20");
            await Expect(phone["held-here"]).ToContainTextAsync("whether anybody may be in the water");
        }

        // The phone was off in between; the server comes back while it lies in a pocket.
        await using (var phone = await chromium.OpenPhoneAsync(_phone, server.Address))
        {
            await phone.Page.GotoAsync("/#/round");
            await Expect(phone["outbox-waiting"]).ToContainTextAsync("Main pool");
            server = await WholeServer.StartAsync(server.Folder, port: server.Port);
            await using (server)
            {
                await Expect(phone["outbox"]).ToHaveCountAsync(0);
                await Expect(phone["not-live"]).ToBeHiddenAsync();
                Assert.Equal([0.2, 28.2], Assert.Single(await server.ChecksAsync()).Check.Results.Select(r => r.Value));
            }
        }
    }

    [BrowserFact]
    public async Task Of_two_tabs_one_sends_what_waits_and_both_know_it()
    {
        var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenPhoneAsync(_phone, server.Address);
        await phone.GoAsync("check/main");
        await PutOnDeviceAsync(phone);
        var other = await phone.AnotherTabAsync(server.Address);
        await other.Page.GotoAsync("/#/check/main");
        await Expect(other["life"]).ToHaveTextAsync("Live");
        await server.StopAsync();
        await Expect(phone["not-live"]).ToBeVisibleAsync();
        await phone.GoOfflineAsync("R. Castellan", "7,40");
        await Expect(other["outbox-waiting"]).ToHaveCountAsync(1);

        var answered = new ConcurrentQueue<string>();
        foreach (var page in new[] { phone.Page, other.Page })
            page.Response += (_, response) => { if (response.Request.Method == "PUT") answered.Enqueue(response.Url); };
        server = await WholeServer.StartAsync(server.Folder, port: server.Port);
        await using (server)
        {
            await Expect(other["outbox"]).ToHaveCountAsync(0);
            await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "answered");
            Assert.Single(await server.ChecksAsync());
            Assert.Single(answered);
        }
    }

    [BrowserFact]
    public async Task A_newer_set_of_pages_is_offered_and_a_draft_outlives_taking_it()
    {
        await using var server = await TestPlant.StartAsync();
        await using var phone = await chromium.OpenPhoneAsync(_phone, server.Address);
        await phone.GoAsync("check/main");
        await PutOnDeviceAsync(phone);
        await phone.TypeAsync("field-ph", "7,4");
        var worker = Path.Combine(AppContext.BaseDirectory, "wwwroot", "sw.js");
        var before = await File.ReadAllTextAsync(worker);
        try
        {
            await File.WriteAllTextAsync(worker, before.Replace("const version = '", "const version = 'next", StringComparison.Ordinal));
            await phone.AskAsync<int>("() => navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => 0)");
            // Somebody is typing: it is offered and not taken.
            await Expect(phone["newer"]).ToBeVisibleAsync();
            await Expect(phone["field-ph"]).ToHaveValueAsync("7,4");
            await phone["take-newer"].ClickAsync();
            await Expect(phone["newer"]).ToHaveCountAsync(0);
            await Expect(phone["field-ph"]).ToHaveValueAsync("7,4");
            await Expect(phone["life"]).ToHaveTextAsync("Live");
            Assert.Contains("next", await phone.AskAsync<string>("() => fetch(navigator.serviceWorker.controller.scriptURL).then(r => r.text()).then(t => t.match(/version = '(\\w+)'/)[1])"), StringComparison.Ordinal);
            Assert.Contains(await phone.AskAsync<string[]>("() => caches.keys()"), name => name.Contains("next", StringComparison.Ordinal));
        }
        finally
        {
            await File.WriteAllTextAsync(worker, before);
        }
        phone.IsClean();
    }

    [BrowserFact]
    public async Task Plain_http_says_what_is_missing_and_a_full_device_says_so_before_anything_is_lost()
    {
        await using var server = await TestPlant.StartAsync();
        var named = new UriBuilder(server.Address) { Host = "baths.test" }.Uri;
        await using var phone = await chromium.OpenPhoneAsync(_phone, named, "--host-resolver-rules=MAP baths.test 127.0.0.1");
        await phone.GoAsync("round");
        await Expect(phone["offline-help"]).ToHaveAttributeAsync("data-reach", "insecure");
        await phone["offline-help"].Locator("summary").ClickAsync();
        await Expect(phone["offline-help"]).ToContainTextAsync("https");
        await Expect(phone["no-room"]).ToHaveCountAsync(0);

        await phone.AskAsync<int>("() => { let block = 'x'.repeat(1 << 20), n = 0; while (block.length > 10) { try { localStorage.setItem('filler' + n++, block); } catch { block = block.slice(0, block.length / 2); } } return 0; }");
        await phone.Page.ReloadAsync();
        await Expect(phone["no-room"]).ToBeVisibleAsync();
        await RoundTests.BeginAsync(phone, "main");
        await Expect(phone["unkept"]).ToBeVisibleAsync();
        // The browser says so itself: a header that keeps other windows out counts for nothing on plain http.
        phone.IsClean(said => said.Contains("Cross-Origin-Opener-Policy header has been ignored", StringComparison.Ordinal));
    }

    // The pages and the last state lie on the device.
    private static async Task PutOnDeviceAsync(Screen phone)
    {
        await phone.UntilAsync("() => navigator.serviceWorker.controller !== null");
        await phone.AskAsync<int>("""
            async () => {
              const heard = () => new Promise(done => {
                const opened = indexedDB.open('plantwatch', 1);
                opened.onsuccess = () => { const asked = opened.result.transaction('kept').objectStore('kept').get('heard'); asked.onsuccess = () => { opened.result.close(); done(!!asked.result); }; };
              });
              while (!await heard()) await new Promise(done => setTimeout(done, 100));
              return 0;
            }
            """);
    }
}

file static class Typing
{
    public static async Task GoOfflineAsync(this Screen phone, string who, string ph)
    {
        await phone.TypeAsync("field-who", who);
        await phone.TypeAsync("field-ph", ph);
        await phone["submit-check"].ClickAsync();
        await Expect(phone["check-answer"]).ToHaveAttributeAsync("data-outcome", "unreachable");
    }
}
