using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A stop changes nothing: state, sums and answers go on where they stood.</summary>
public sealed class RestartTests
{
    [PeerFact("mosquitto_pub")]
    public async Task The_state_hash_is_equal_live_from_a_snapshot_and_from_zero()
    {
        var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"{7.2 + (i % 40 / 100.0)}")));
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)));
        await server.PublishAsync("hall/acid/state", "fault");
        var worker = server.Host.Find("hall")!;
        var live = worker.State;
        var plan = live.Plan;
        await server.StopAsync();

        await using var store = PlantWatch.Storage.Sqlite.SqliteStore.Open(Path.Combine(server.Folder, "data", "record.db"), TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        var fromSnapshot = await Restore.FromAsync(store, new PartitionKey("hall"), plan, default);
        var fromZero = await Restore.FromZeroAsync(store, new PartitionKey("hall"), plan, default);
        Assert.True(fromZero.Replayed > fromSnapshot.Replayed, "the snapshot saved no work");
        Assert.Equal(PlantJson.HashOf(worker.State), PlantJson.HashOf(fromSnapshot.State));
        Assert.Equal(PlantJson.HashOf(worker.State), PlantJson.HashOf(fromZero.State));
        Directory.Delete(server.Folder, recursive: true);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Sums_alarms_and_readings_survive_a_restart()
    {
        var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.4", 50));
        await server.PublishAsync("hall/acid/state", "fault");
        var before = await server.SumsAsync();
        var alarm = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == "R-030");
        server = await server.RestartAsync();
        await using (server)
        {
            var after = await server.SumsAsync();
            Assert.Equal((before.Received, before.Stored, before.Refused), (after.Received, after.Stored, after.Refused));
            Assert.Equal(alarm.Id, (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == "R-030").Id);
        }
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_browser_is_greeted_with_everything_and_told_each_change()
    {
        await using var server = await WholeServer.StartAsync();
        await using var page = new HubConnectionBuilder().WithUrl(new Uri(server.Address, "/live"))
            .AddJsonProtocol(o => o.PayloadSerializerOptions = PlantJson.Options).Build();
        var (greeted, value, alarmed) = (new TaskCompletionSource<CircuitView>(), new TaskCompletionSource<ReadingPoint>(), new TaskCompletionSource<AlarmView>());
        page.On<CircuitView>("circuit", view =>
        {
            greeted.TrySetResult(view);
            if (view.Alarms.FirstOrDefault(a => a.Rule == "R-030") is { } alarm) alarmed.TrySetResult(alarm);
        });
        page.On<ReadingsDelta>("readings", delta =>
        {
            if (delta.Readings.Any(r => r.S == "ph")) value.TrySetResult(delta.Readings.First(r => r.S == "ph"));
        });
        await page.StartAsync();
        Assert.Equal("hall", (await greeted.Task.WaitAsync(TimeSpan.FromSeconds(20))).Id);
        await server.PublishAsync("hall/ph", "7.52");
        Assert.Equal(7.52, (await value.Task.WaitAsync(TimeSpan.FromSeconds(20))).V);
        await server.PublishAsync("hall/acid/state", "fault");
        Assert.Equal("acid-pump", (await alarmed.Task.WaitAsync(TimeSpan.FromSeconds(20))).Subject);
    }

    [Fact]
    public async Task A_broken_plant_file_leaves_the_old_one_in_force_and_the_page_says_so_also_after_a_restart()
    {
        var server = await WholeServer.StartAsync();
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), WholeServer.Plant.Replace("volume_m3: 400", "volume_m3: big", StringComparison.Ordinal));
        await UntilAsync(async () => (await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile.Any(e => e.Contains("volume_m3", StringComparison.Ordinal)), "the error is shown");
        Assert.Equal("Hall", (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Single().Name);
        server = await server.RestartAsync();
        await using (server)
        {
            Assert.Equal("Hall", (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Single().Name);
            Assert.Contains((await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile, e => e.Contains("volume_m3", StringComparison.Ordinal));
        }
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_renamed_probe_keeps_its_history_and_the_change_is_in_the_record()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/ph", "7.4");
        var renamed = WholeServer.Plant.Replace("- id: ph\n", "- id: ph-new\n        was: ph\n", StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), renamed);
        await UntilAsync(async () => (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Single().Probes.Any(p => p.Id == "ph-new"), "the new plan is in force");
        var now = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "ph-new");
        Assert.Equal(7.4, now.Value);
        Assert.Single(await server.Series.RawAsync(new PartitionKey("hall"), "ph-new", WholeServer.Now - TimeSpan.FromHours(1), WholeServer.Now, 10, default));
        var entries = await server.Record.EntriesAsync(new PartitionKey("hall"), new EntryQuery(["plan"]), default);
        Assert.Contains(entries, e => e.Body is PlanEntry plan && plan.Effects.Any(r => r.Code == "plan.probe_renamed"));
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_pool_that_moves_to_a_circuit_of_its_own_is_stated_in_the_record_of_both()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/ph", "7.4");
        const string annexe = """

              - id: annexe
                name: Annexe
                pools:
                  - { id: main, name: Main pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 400 }
                probes:
                  - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 1 }
            """;
        var split = WholeServer.Plant[..WholeServer.Plant.IndexOf("    pools:", StringComparison.Ordinal)] + "    pools:\n      - { id: plunge, name: Plunge, kind: plunge, setting: indoor, disinfectant: chlorine, volume_m3: 4 }" + annexe;
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), split);
        await UntilAsync(async () => (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Any(c => c.Id == "annexe"), "the new plan is in force");
        foreach (var circuit in (string[])["hall", "annexe"])
        {
            var entries = await server.Record.EntriesAsync(new PartitionKey(circuit), new EntryQuery(["plan"]), default);
            Assert.Contains(entries, e => e.Body is PlanEntry plan && plan.Effects.Any(r => r.Code == "plan.pool_moved" && r.Facts[0].Text == "main"));
        }

        await server.PublishAsync("hall/ph", "7.5");
        Assert.Equal(7.5, (await server.GetAsync<CircuitView>("/api/v1/circuits/annexe")).Probes.Single().Value);
    }

    private static async Task UntilAsync(Func<Task<bool>> holds, string sentence)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!await holds())
        {
            if (patience.IsCancellationRequested) Assert.Fail($"never came: {sentence}");
            await Task.Delay(50);
        }
    }
}
