using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A new plant file puts a pool into another circuit: it opens nothing, whether the server runs meanwhile or stands still.</summary>
public sealed class PoolMoveTests
{
    private const string Head = """
        site:
          name: Bramble Street Baths
          time_zone: Europe/London
        people:
          - { id: b, name: I. Brandvold, role: duty_manager }
        circuits:
          - id: hall
            name: Hall
            pools:
              - { id: main, name: Main pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 400 }
        """;

    private const string Teaching = "      - { id: teaching, name: Teaching pool, kind: teaching, setting: indoor, disinfectant: chlorine, volume_m3: 60 }\n";

    private const string Together = Head + "\n" + Teaching;
    private const string Apart = Head + "\n  - id: annexe\n    name: Annexe\n    pools:\n" + Teaching;

    [Fact]
    public async Task An_open_incident_goes_along_and_keeps_both_circuits_closed()
    {
        await using var server = await WholeServer.StartAsync(plant: Together);
        var id = Guid.CreateVersion7();
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}", new DeclareIncident("main", IncidentKind.DiarrhoealStool, IncidentAuthority.UsCdc, "R. Castellan", null, Instant.Never)));
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), Apart);
        await UntilAsync(async () => (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Any(c => c.Id == "annexe"));
        await IsClosedByAsync(server, "main", id);
        var came = Assert.Single(await server.GetAsync<List<IncidentView>>("/api/v1/incidents?pool=teaching"));
        Assert.NotEqual(id, came.Id);
        await IsClosedByAsync(server, "teaching", came.Id);
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}/closing", new CloseIncident("I. Brandvold", "held and tested")));
        await IsClosedByAsync(server, "teaching", came.Id);
    }

    [Fact]
    public async Task A_pool_closed_for_cause_is_so_after_its_circuit_has_left_the_file_of_a_server_that_stood_still()
    {
        var server = await WholeServer.StartAsync(plant: Apart);
        await WholeServer.ReadAsync<GateView>(await server.PutAsync($"/api/v1/pools/teaching/state/{Guid.CreateVersion7()}", new PoolStateRequest(OperatingState.Covered, "R. Castellan", "glass in the water", ForCause: true)));
        await server.StopAsync();
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), Together);
        await using var again = await WholeServer.StartAsync(server.Folder);
        var operation = (await again.GetAsync<GateView>("/api/v1/pools/teaching/gate")).Operation;
        Assert.Equal((OperatingState.Covered, true, "glass in the water"), (operation.State, operation.ForCause, operation.Why));
        Assert.Equal("hall", Assert.Single((await again.GetAsync<SiteView>("/api/v1/site")).Circuits).Id);
    }

    private static async Task IsClosedByAsync(WholeServer server, string pool, Guid incident)
    {
        var gate = await server.GetAsync<GateView>($"/api/v1/pools/{pool}/gate");
        Assert.Equal((OperatingState.Closed, true), (gate.Operation.State, gate.Operation.ForCause));
        var circuits = await server.GetAsync<SiteView>("/api/v1/site");
        var circuit = await server.GetAsync<CircuitView>($"/api/v1/circuits/{circuits.Circuits.Single(c => c.Pools.Any(p => p.Id == pool)).Id}");
        Assert.Equal(PoolWord.Stop, circuit.Pools.Single(p => p.Id == pool).State);
        Assert.Equal(incident, Assert.Single(circuit.Pools.Single(p => p.Id == pool).Incidents).Id);
    }

    private static async Task UntilAsync(Func<Task<bool>> holds)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!await holds())
        {
            if (patience.IsCancellationRequested) Assert.Fail("the new plan never came into force");
            await Task.Delay(50);
        }
    }
}
