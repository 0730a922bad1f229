using System.Net;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A contamination incident through the public interface.</summary>
public sealed class IncidentTests
{
    private static readonly DeclareIncident Formed = new("main", IncidentKind.FormedStool, IncidentAuthority.UsCdc, "R. Castellan", null, Instant.Never);

    [Fact]
    public async Task Tests_by_hand_reach_the_hold_and_a_person_closes_it_also_after_a_restart()
    {
        var server = await WholeServer.StartAsync();
        var (id, now) = (Guid.CreateVersion7(), WholeServer.Now);
        var declared = await DeclareAsync(server, id, Formed with { HappenedAt = now - TimeSpan.FromMinutes(40) });
        Assert.Equal("incident.cyanurate_unknown", declared.Clock!.Why[0].Code);
        await CheckAsync(server, now - TimeSpan.FromMinutes(35), SamplePoint.Pool, null, new TestResult(Measurand.CyanuricAcid, 0, TestMethod.Photometer));
        await CheckAsync(server, now - TimeSpan.FromMinutes(27), SamplePoint.Pool, "shallow end", Chlorine(2.4));
        await CheckAsync(server, now - TimeSpan.FromMinutes(26), SamplePoint.Pool, "stairs", Chlorine(2.4));
        await CheckAsync(server, now - TimeSpan.FromMinutes(25), SamplePoint.Outlet, null, Chlorine(2.4), Ph(7.4), Warm);
        var running = await ReadAsync(server, id);
        Assert.Equal((HoldWord.Running, 0.0), (running.Clock!.Word, running.Clock.Credited));

        server = await server.RestartAsync();
        await using (server)
        {
            await CheckAsync(server, now, SamplePoint.Outlet, null, Chlorine(2.4), Ph(7.4), Warm);
            var reached = await ReadAsync(server, id);
            Assert.Equal((HoldWord.Reached, 1.0), (reached.Clock!.Word, reached.Clock.Share));
            // Reached opens nothing.
            var circuit = await server.GetAsync<CircuitView>("/api/v1/circuits/hall");
            Assert.Equal(PoolWord.Stop, circuit.Pools[0].State);
            Assert.Equal("incident.open", circuit.Pools[0].Why[0].Code);
            Assert.Equal(id, Assert.Single(circuit.Pools[0].Incidents).Id);

            var closed = await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}/closing", new CloseIncident("J. Sample", "hold reached, water tested")));
            Assert.Equal(("J. Sample", HoldWord.Reached), (closed.Closed!.By, closed.Closed.Word));
            Assert.DoesNotContain((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms, a => a is { Rule: "R-005", Active: true });
            Assert.Equal(id, Assert.Single(await server.GetAsync<List<IncidentView>>("/api/v1/incidents?pool=main")).Id);
        }
    }

    [Fact]
    public async Task Sent_twice_it_is_one_and_its_id_is_never_another()
    {
        await using var server = await WholeServer.StartAsync();
        var id = Guid.CreateVersion7();
        var first = await DeclareAsync(server, id, Formed);
        Assert.Equal(first.DeclaredAt, (await DeclareAsync(server, id, Formed)).DeclaredAt);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/incidents/{id}", Formed with { Kind = IncidentKind.DiarrhoealStool })).StatusCode);
        var remark = $"/api/v1/incidents/{id}/remarks/{Guid.CreateVersion7()}";
        await server.PutAsync(remark, new IncidentNote("R. Castellan", "filters on"));
        Assert.Single((await WholeServer.ReadAsync<IncidentView>(await server.PutAsync(remark, new IncidentNote("R. Castellan", "filters on")))).Remarks);
        var closing = new CloseIncident("J. Sample", "false alarm: a leaf");
        var closed = await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}/closing", closing));
        Assert.Equal(closed.Closed!.At, (await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}/closing", closing))).Closed!.At);
        Assert.NotNull((await DeclareAsync(server, id, Formed)).Closed);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/incidents/{id}", Formed with { By = "somebody else" })).StatusCode);
    }

    [Fact]
    public async Task What_is_wrong_is_said_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync();
        foreach (var (request, field) in new[]
        {
            (Formed with { PoolId = "nowhere" }, "poolId"), (Formed with { By = " " }, "by"), (Formed with { Kind = IncidentKind.Blood }, "authority"),
            (Formed with { HappenedAt = WholeServer.Now + TimeSpan.FromDays(1) }, "happenedAt"),
        })
        {
            var answer = await server.PutAsync($"/api/v1/incidents/{Guid.CreateVersion7()}", request);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Contains($"\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await server.PutAsync($"/api/v1/incidents/{Guid.CreateVersion7()}/closing", new CloseIncident("J. Sample", "why"))).StatusCode);
        Assert.Empty(await server.GetAsync<List<IncidentView>>("/api/v1/incidents"));
    }

    [Fact]
    public async Task Every_authority_stands_apart_and_every_sentence_has_its_words()
    {
        await using var server = await WholeServer.StartAsync();
        var kinds = await server.GetAsync<List<KindOfIncident>>("/api/v1/incidents/plans");
        Assert.Equal(5, kinds.Count);
        var loose = kinds.Single(k => k.Kind == IncidentKind.DiarrhoealStool);
        Assert.True(loose.Authorities.Count(a => a.InUse) >= 4);
        Assert.Contains(loose.Authorities.SelectMany(a => a.Rows), r => r.Provenance.Code == "from_memory" && r.Provenance.Text.StartsWith("from memory", StringComparison.Ordinal));
        foreach (var kind in kinds)
        {
            Assert.All(kind.Steps.Concat(kind.Authorities.SelectMany(a => a.Rows).SelectMany(r => r.Remarks)), said => Assert.NotEqual(said.Code, said.Text));
            Assert.All(kind.Authorities, a => Assert.DoesNotContain("name.", a.Name, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task The_plan_of_the_picked_pack_is_proposed_where_it_has_one_and_said_of_the_open_incident()
    {
        await using var server = await WholeServer.StartAsync(plant: "limit_pack: us-ar\n" + WholeServer.Plant.ReplaceLineEndings("\n"));
        var kinds = await server.GetAsync<List<KindOfIncident>>("/api/v1/incidents/plans?pool=main");
        Assert.Equal((IncidentAuthority.UsArkansas, "incident.pack_proposes"), Proposed(kinds, IncidentKind.FormedStool));
        // The pack has no plan for a loose stool: another authority's is never put in its place.
        Assert.Equal((null, "incident.pack_has_no_plan"), Proposed(kinds, IncidentKind.DiarrhoealStool));
        Assert.All(kinds, k => Assert.Contains("Arkansas", k.ProposedWhy!.Text, StringComparison.Ordinal));
        Assert.All(await server.GetAsync<List<KindOfIncident>>("/api/v1/incidents/plans"), k => Assert.Null(k.ProposedWhy));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/incidents/plans?pool=nowhere")).StatusCode);

        var byPack = await DeclareAsync(server, Guid.CreateVersion7(), Formed with { Authority = IncidentAuthority.UsArkansas });
        Assert.Equal("incident.by_pack", byPack.Plan!.Code);
        Assert.Equal("incident.not_by_pack", (await DeclareAsync(server, Guid.CreateVersion7(), Formed)).Plan!.Code);
    }

    [Fact]
    public async Task Without_a_pack_nobody_is_proposed_and_a_superseded_plan_never_is()
    {
        await using (var server = await WholeServer.StartAsync())
        {
            Assert.All(await server.GetAsync<List<KindOfIncident>>("/api/v1/incidents/plans?pool=main"), k => Assert.Equal((null, "incident.no_pack"), (k.Proposed, k.ProposedWhy!.Code)));
            Assert.Equal("incident.chosen_without_pack", (await DeclareAsync(server, Guid.CreateVersion7(), Formed)).Plan!.Code);
        }

        Assert.Equal(IncidentAuthority.UsCdc2001, PackAuthority.Of("us-cdc-2001"));
        Assert.All(Enum.GetValues<IncidentKind>(), kind => Assert.Null(PackAuthority.For("us-cdc-2001", kind)));
    }

    [Fact]
    public void Every_pack_with_rows_for_incidents_names_its_authority_and_no_other_does()
    {
        foreach (var pack in Server.LimitPacks.PackShelf.Shipped.InOrder)
            Assert.Equal((pack.Id, pack.Rows.Any(r => r.Says.StartsWith("incident", StringComparison.Ordinal))), (pack.Id, PackAuthority.Of(pack.Id) is not null));
    }

    private static (IncidentAuthority?, string) Proposed(List<KindOfIncident> kinds, IncidentKind kind) => kinds.Single(k => k.Kind == kind) is var of ? (of.Proposed, of.ProposedWhy!.Code) : default;

    private static async Task<IncidentView> DeclareAsync(WholeServer server, Guid id, DeclareIncident request) =>
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{id}", request));

    private static Task<IncidentView> ReadAsync(WholeServer server, Guid id) => server.GetAsync<IncidentView>($"/api/v1/incidents/{id}");

    private static async Task CheckAsync(WholeServer server, Instant at, SamplePoint point, string? place, params TestResult[] results) =>
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(at, results) with { Point = point, Place = place }));

    private static TestResult Chlorine(double value) => new(Measurand.FreeChlorine, value, TestMethod.Photometer);

    private static TestResult Ph(double value) => new(Measurand.Ph, value, TestMethod.Meter);

    private static TestResult Warm { get; } = new(Measurand.Temperature, 27, TestMethod.Meter);
}
