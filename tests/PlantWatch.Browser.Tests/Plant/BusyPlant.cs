using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Browser.Tests.Plant;

/// <summary>The test plant on a bad morning: something of everything that a page can show. One for a class of tests, which only look.</summary>
public sealed class BusyPlant : IAsyncLifetime
{
    private WholeServer? _server;

    public Task InitializeAsync() => Task.CompletedTask;

    /// <summary>Where it is; started by the first that asks.</summary>
    public async Task<Uri> AddressAsync() => (_server ??= await StartAsync()).Address;

    public async Task DisposeAsync()
    {
        if (_server is not null) await _server.DisposeAsync();
    }

    private static async Task<WholeServer> StartAsync()
    {
        var server = await TestPlant.StartAsync();
        await server.PublishPastAsync(minutes: 300);
        for (var i = 0; i < 4; i++)
        {
            await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 20).Select(n => FormattableString.Invariant($"{7.88 + (n % 3 * 0.01):0.00}")));
            await server.PublishLinesAsync("hall/panel", Enumerable.Repeat("7.44", 5));
            await SendAsync(server, "main", TimeSpan.Zero, new TestResult(Measurand.Ph, 7.4 + (i * 0.01), TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 1.3, TestMethod.Photometer),
                new TestResult(Measurand.TotalChlorine, 2.45, TestMethod.Photometer), new TestResult(Measurand.Temperature, 28.3, TestMethod.Meter));
        }
        await SendAsync(server, "main", TimeSpan.Zero, new TestResult(Measurand.TotalAlkalinity, 120, TestMethod.TabletCount), new TestResult(Measurand.CalciumHardness, 240, TestMethod.Photometer),
            new TestResult(Measurand.DissolvedSolids, 1100, TestMethod.Meter));
        foreach (var hoursAgo in (int[])[4, 2, 1])
            await SendAsync(server, "teaching", TimeSpan.FromHours(hoursAgo), new TestResult(Measurand.Ph, 7.43, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 1.1, TestMethod.Photometer));
        foreach (var (topic, payload) in ((string, string)[])
            [("hall/acid/state", "fault"), ("hall/acid/tank", "64"), ("hall/hypo/state", "running"), ("hall/hypo/tank", "9"), ("hall/ph", "seven"), ("hall/nobody", new string('x', 400))])
            await server.PublishAsync(topic, payload);
        await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new Server.Api.JobRequest("hypo-pump", "suction line sucks air at the foot valve", null, Core.Maintenance.JobState.InHand, null, "T. Wren"));
        return server;
    }

    private static async Task SendAsync(WholeServer server, string pool, TimeSpan ago, params TestResult[] results)
    {
        var check = WholeServer.Check(WholeServer.Now - ago, results) with { PoolId = pool, BottomVisible = true, Bathers = 14 };
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
    }
}
