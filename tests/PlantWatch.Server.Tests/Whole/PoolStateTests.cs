using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Pools are opened and closed through the public interface, as the pool page does it.</summary>
public sealed class PoolStateTests
{
    private const string Operator = "R. Castellan";
    private const string Manager = "I. Brandvold";

    // Two pools on one circuit, one probe, somebody who may open after a cause and somebody who may not.
    private const string Plant = """
        site:
          name: Bramble Street Baths
          time_zone: Europe/London
        people:
          - { id: b, name: I. Brandvold, role: duty_manager }
          - { id: c, name: R. Castellan, role: operator }
        circuits:
          - id: hall
            name: Hall
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - { measurand: ph, low: 7.2, high: 7.6, source: test }
                  - { measurand: free_chlorine, low: 0.8, high: 3, source: test }
              - id: teaching
                name: Teaching pool
                kind: teaching
                setting: indoor
                disinfectant: chlorine
                volume_m3: 60
                limits:
                  - { measurand: ph, low: 7.2, high: 7.6, source: test }
            probes:
              - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 600 }
        """;

    [Fact]
    public async Task Opening_is_refused_with_every_line_that_is_not_met_and_allowed_when_all_are()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Equal(["gate.test.ph", "gate.test.free_chlorine", "gate.bottom", "gate.flow"], await RefusedAsync(server, new(OperatingState.Open, Operator), HttpStatusCode.Conflict));
        Assert.Equal(OperatingState.NotStated, (await GateAsync(server)).Operation.State);

        await server.PublishAsync("hall/ph", "7.40");
        await CheckAsync(server, 7.9, 1.5, bottom: true);
        Assert.Equal(["gate.test.ph", "gate.alarm.R-012/main/ph"], await RefusedAsync(server, new(OperatingState.Open, Operator), HttpStatusCode.Conflict));
        await CheckAsync(server, 7.4, 1.5, bottom: true);
        var open = await SetAsync(server, new(OperatingState.Open, $" {Operator} "));
        Assert.Equal((OperatingState.Open, Operator, true), (open.Operation.State, open.Operation.By, open.Passed));
        Assert.All(open.Lines, line => Assert.NotEqual(line.Why.Code, line.Why.Text));

        // What was opened is open after a restart and stands where the pool is shown.
        await using var again = await server.RestartAsync();
        Assert.Equal(OperatingState.Open, (await again.GetAsync<CircuitView>("/api/v1/circuits/hall")).Pools[0].Operation!.State);
    }

    [Fact]
    public async Task Closing_needs_no_gate_and_a_cause_needs_its_words()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Equal((OperatingState.Closed, false), State(await SetAsync(server, new(OperatingState.Closed, Operator))));
        Assert.Equal(["why"], await RefusedAsync(server, new(OperatingState.Covered, Operator, ForCause: true), HttpStatusCode.BadRequest));
        Assert.Equal((OperatingState.Covered, true), State(await SetAsync(server, new(OperatingState.Covered, Operator, "glass in the water", ForCause: true))));
        Assert.Equal("glass in the water", (await SetAsync(server, new(OperatingState.Closed, Operator))).Operation.Why);
    }

    [Fact]
    public async Task After_a_cause_the_pool_is_tested_anew_and_only_somebody_entitled_opens_it_with_a_reason()
    {
        await using var server = await ReadyAsync();
        await SetAsync(server, new(OperatingState.Closed, Operator, "glass in the water", ForCause: true));
        Assert.Equal([Manager], (await GateAsync(server)).Signers);
        Assert.All((await GateAsync(server)).Lines.Where(l => l.Code is "test.ph" or "test.free_chlorine"), l => Assert.Equal("gate.test_before_closing", l.Why.Code));
        await CheckAsync(server, 7.4, 1.5, bottom: true);
        foreach (var (request, field) in new[]
        {
            (new PoolStateRequest(OperatingState.Open, Operator, "swept"), "by"), (new PoolStateRequest(OperatingState.Open, "N. Obody", "swept"), "by"),
            (new PoolStateRequest(OperatingState.Open, Manager), "why"), (new PoolStateRequest(OperatingState.Open, Manager, " "), "why"),
        })
            Assert.Equal([field], await RefusedAsync(server, request, HttpStatusCode.Conflict));
        var open = await SetAsync(server, new(OperatingState.Open, Manager, "swept, and looked at by two"));
        Assert.Null(open.Signers);
        Assert.Equal((OperatingState.Open, false, Manager, "swept, and looked at by two"), (open.Operation.State, open.Operation.ForCause, open.Operation.By, open.Operation.Why));
    }

    [Fact]
    public async Task An_incident_closes_both_pools_for_cause_and_keeps_them_closed_until_it_is_closed_and_signed()
    {
        await using var server = await ReadyAsync();
        await SetAsync(server, new(OperatingState.Open, Operator));
        var incident = $"/api/v1/incidents/{Guid.CreateVersion7()}";
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync(incident, new DeclareIncident("teaching", IncidentKind.Vomit, IncidentAuthority.CaQuebec, Operator, null, Instant.Never)));
        foreach (var pool in new[] { "main", "teaching" })
        {
            Assert.Equal((OperatingState.Closed, true), State(await GateAsync(server, pool)));
            Assert.Contains((await GateAsync(server, pool)).Lines, l => l is { Code: "incident", Word: GateWord.NotPassed } && l.Why.Text.Contains("Teaching pool", StringComparison.Ordinal));
        }

        await CheckAsync(server, 7.4, 1.5, bottom: true);
        Assert.Equal(["gate.incident"], await RefusedAsync(server, new(OperatingState.Open, Manager, "looks well"), HttpStatusCode.Conflict));
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"{incident}/closing", new CloseIncident(Manager, "hold over")));
        Assert.Equal((OperatingState.Closed, true), State(await GateAsync(server)));
        Assert.Equal(OperatingState.Open, (await SetAsync(server, new(OperatingState.Open, Manager, "hold over, tested, looked at"))).Operation.State);
        Assert.Equal(OperatingState.Closed, (await GateAsync(server, "teaching")).Operation.State);

        // The record has each of them, newest first.
        var changes = await server.GetAsync<List<PoolStateChangeView>>("/api/v1/pool-states?pool=main");
        Assert.Equal([(OperatingState.Open, Manager, false), (OperatingState.Closed, Operator, true), (OperatingState.Open, Operator, false)], changes.Select(c => (c.State, c.By, c.ByIncident)));
        Assert.Equal((OperatingState.Closed, "hold over, tested, looked at", OperatingState.NotStated), (changes[0].Before, changes[0].Why, changes[2].Before));
        Assert.Equal("teaching", Assert.Single(await server.GetAsync<List<PoolStateChangeView>>("/api/v1/pool-states"), c => c.PoolId == "teaching").PoolId);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/pool-states?pool=nowhere")).StatusCode);
    }

    [Fact]
    public async Task A_drained_pool_is_filled_first_and_its_new_water_is_tested_before_it_opens()
    {
        await using var server = await ReadyAsync();
        await SetAsync(server, new(OperatingState.Drained, Operator));
        Assert.Equal(["state"], await RefusedAsync(server, new(OperatingState.Open, Operator), HttpStatusCode.Conflict));
        Assert.Equal(["state"], await RefusedAsync(server, new(OperatingState.Covered, Operator), HttpStatusCode.Conflict));
        var filled = await SetAsync(server, new(OperatingState.Closed, Operator, Refilled: true));
        Assert.Equal(["gate.test_missing", "gate.test_missing"], filled.Lines.Where(l => l.Code.StartsWith("test.", StringComparison.Ordinal)).Select(l => l.Why.Code));
        await CheckAsync(server, 7.4, 1.5, bottom: true);
        Assert.Equal(OperatingState.Open, (await SetAsync(server, new(OperatingState.Open, Operator))).Operation.State);
    }

    [Fact]
    public async Task An_act_sent_twice_is_one_and_its_id_is_never_another()
    {
        await using var server = await ReadyAsync();
        var id = Guid.CreateVersion7();
        var first = await SetAsync(server, new(OperatingState.Open, Operator), id: id);
        Assert.Equal(first.Operation.Since, (await SetAsync(server, new(OperatingState.Open, Operator), id: id)).Operation.Since);
        await SetAsync(server, new(OperatingState.Closed, Operator));
        // An answer that was lost: the phone sends its old act again, and the pool stays closed.
        Assert.Equal(OperatingState.Closed, (await SetAsync(server, new(OperatingState.Open, Operator), id: id)).Operation.State);
        Assert.Equal(["id"], await RefusedAsync(server, new(OperatingState.Covered, Operator), HttpStatusCode.Conflict, id: id));
    }

    [Fact]
    public async Task What_is_wrong_is_said_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        foreach (var (request, field) in new[]
        {
            (new PoolStateRequest(OperatingState.Closed, " "), "by"), (new PoolStateRequest(OperatingState.Closed, null), "by"), (new PoolStateRequest(OperatingState.NotStated, Operator), "state"),
            (new PoolStateRequest(OperatingState.Closed, new string('x', 4000)), "by"), (new PoolStateRequest(OperatingState.Closed, Operator, new string('x', 40_000)), "why"),
        })
            Assert.Equal([field], await RefusedAsync(server, request, HttpStatusCode.BadRequest));
        Assert.Equal(["id"], await RefusedAsync(server, new(OperatingState.Closed, Operator), HttpStatusCode.BadRequest, id: Guid.NewGuid()));
        Assert.Equal([""], await RefusedAsync(server, new(OperatingState.Closed, Operator), HttpStatusCode.NotFound, pool: "nowhere"));
        foreach (var body in new object[] { new { state = "half_open", by = Operator }, new { state = 77, by = Operator }, new[] { 1 }, "open" })
            Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync(Path("main", Guid.CreateVersion7()), body)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/pools/nowhere/gate")).StatusCode);
        Assert.Equal(OperatingState.NotStated, (await GateAsync(server)).Operation.State);
    }

    private static async Task<WholeServer> ReadyAsync()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        await server.PublishAsync("hall/ph", "7.40");
        await CheckAsync(server, 7.4, 1.5, bottom: true);
        return server;
    }

    private static (OperatingState, bool) State(GateView gate) => (gate.Operation.State, gate.Operation.ForCause);

    private static string Path(string pool, Guid id) => $"/api/v1/pools/{pool}/state/{id}";

    private static Task<GateView> GateAsync(WholeServer server, string pool = "main") => server.GetAsync<GateView>($"/api/v1/pools/{pool}/gate");

    private static async Task<GateView> SetAsync(WholeServer server, PoolStateRequest request, string pool = "main", Guid? id = null) =>
        await WholeServer.ReadAsync<GateView>(await server.PutAsync(Path(pool, id ?? Guid.CreateVersion7()), request));

    // The fields that a refusal names, in its order.
    private static async Task<string[]> RefusedAsync(WholeServer server, PoolStateRequest request, HttpStatusCode status, string pool = "main", Guid? id = null)
    {
        using var answer = await server.PutAsync(Path(pool, id ?? Guid.CreateVersion7()), request);
        Assert.Equal(status, answer.StatusCode);
        return [.. (await answer.Content.ReadFromJsonAsync<Problem>(PlantJson.Options))!.Errors.Select(e => e.Field)];
    }

    private static async Task CheckAsync(WholeServer server, double ph, double chlorine, bool bottom) => await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync(
        $"/api/v1/checks/{Guid.CreateVersion7()}",
        WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, ph, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, chlorine, TestMethod.Photometer)) with { BottomVisible = bottom }));
}
