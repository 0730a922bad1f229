using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A plant file leaves out a circuit in which a latch holds: nobody would see it any more, so it is refused until somebody has seen to it.</summary>
public sealed class LeftOutCircuitTests
{
    private const string Spa = """

          - id: spa
            name: Spa circuit
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }
            pumps:
              - { id: spa-hypo, name: Spa hypochlorite, product: hypo, state_topic: spa/hypo/state, tank_topic: spa/hypo/tank, tank_litres: 60 }

        """;

    private static readonly string Without = WholeServer.Plant.Replace("circuits:\n", "  - { id: hypo, name: Hypochlorite, kind: sodium_hypochlorite, strength_percent: 12, strength_means: trade }\ncircuits:\n", StringComparison.Ordinal) + "\n";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task It_stays_and_is_shown_until_its_latch_was_reset_whether_the_server_runs_or_stood_still(bool stoodStill)
    {
        var server = await WholeServer.StartAsync(plant: Without + Spa);
        var wrong = new StockMoveRequest("acid", "spa-hypo", 25, null, WholeServer.Now, "R. Castellan", "T. Wren") { WentIn = true };
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{Guid.CreateVersion7()}", wrong));
        if (stoodStill) await server.StopAsync();
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), Without);
        if (stoodStill) server = await WholeServer.StartAsync(server.Folder);
        await using (server)
        {
            await UntilAsync(async () => (await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile.Count > 0);
            var said = Assert.Single((await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile);
            Assert.Contains("'spa' cannot be left out", said, StringComparison.Ordinal);
            Assert.Contains("R-043", said, StringComparison.Ordinal);
            Assert.Contains("Spa hypochlorite", said, StringComparison.Ordinal);
            var alarm = Assert.Single((await server.GetAsync<CircuitView>("/api/v1/circuits/spa")).Alarms, a => a.Rule == "R-043");

            await server.PostAsync($"/api/v1/alarms/{alarm.Id}/made-safe", new MakeSafe(false, true, false, "T. Wren", "emptied", RoomLeft: true, TankDealtWith: true));
            await server.PostAsync($"/api/v1/alarms/{alarm.Id}/acknowledge", new Acknowledge("T. Wren", null));
            await WholeServer.ReadAsync<AlarmView>(await server.PostAsync($"/api/v1/alarms/{alarm.Id}/reset", new Acknowledge("T. Wren", null)));
            // It is taken by itself: nobody has to save it again.
            await UntilAsync(async () => (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.All(c => c.Id != "spa"));
            await UntilAsync(async () => (await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile.Count == 0);
        }
    }

    private static async Task UntilAsync(Func<Task<bool>> holds)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!await holds())
        {
            if (patience.IsCancellationRequested) Assert.Fail("it never came to be so");
            await Task.Delay(50);
        }
    }
}
