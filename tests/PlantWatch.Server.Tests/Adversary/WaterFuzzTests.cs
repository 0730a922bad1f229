using System.Net;
using System.Text;
using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>Some thousands of spoiled requests at what works out, advises and records the chemistry of the water, and people who act at the same moment.</summary>
public sealed class WaterFuzzTests
{
    private const int Requests = 3000;
    private const int AtOnce = 4;

    private static readonly string Now = WholeServer.Now.ToString();

    private static readonly (string Method, string Path, string? Body)[] Doors =
    [
        ("GET", "/pools/*/balance", null), ("GET", "/pools/main/balance", null), ("GET", "/pools/*/circulation", null), ("GET", "/probes/*/orp", null), ("GET", "/probes/redox/orp", null),
        ("GET", "/pools/main/circulation?bathers=*&litresPerBather=*&backwashFlow=*&backwashMinutes=*", null), ("GET", "/pools/main/circulation?bathers=3&backwashFlow=*&backwashMinutes=*", null),
        ("GET", "/pools/*/doses", null), ("GET", "/pools/main/doses", null), ("GET", "/incidents?pool=*", null), ("GET", "/incidents", null), ("GET", "/incidents/~", null), ("GET", "/incidents/plans", null),
        ("POST", "/pools/main/what-if", """
            {"water":{"ph":7.4,"temperature":26,"totalAlkalinity":100,"calciumHardness":250,"dissolvedSolids":900,"cyanuricAcid":30,"freeChlorine":2},
             "doses":[{"product":"acid","kilograms":1},{"product":"soda","kilograms":2}],"volumeM3":400,"curve":"acid","chlorineSpent":true}
            """),
        ("POST", "/pools/*/what-if", """{"water":null,"doses":null,"volumeM3":null,"curve":null}"""),
        ("POST", "/pools/main/dose-advice", """{"productId":"acid","target":"ph","value":7.3,"bathersOut":true,"closed":true}"""),
        ("POST", "/pools/main/dose-advice", """{"productId":"hypo","target":"free_chlorine","value":2.5,"bathersOut":true,"closed":false}"""),
        ("POST", "/pools/main/dosing-plan", """
            {"water":{"ph":7.9,"temperature":26,"totalAlkalinity":60,"calciumHardness":150,"dissolvedSolids":900,"cyanuricAcid":0,"freeChlorine":0.5},
             "fill":{"ph":7.6,"temperature":12,"totalAlkalinity":90,"calciumHardness":120,"dissolvedSolids":300,"cyanuricAcid":null,"freeChlorine":null},"bathersOut":true,"wish":"fewer_goes"}
            """),
        ("PUT", "/doses/~", $$"""{"poolId":"main","productId":"hypo","kilograms":null,"litres":2,"givenAt":"{{Now}}","by":"T. Wren","note":"x","corrects":null,"correctionReason":null}"""),
        ("GET", "/stock?days=*", null), ("GET", "/stock/moves?limit=*", null), ("GET", "/bathers?days=*", null),
        ("PUT", "/deliveries/~", $$"""{"productId":"hypo","pumpId":null,"litres":100,"kilograms":null,"happenedAt":"{{Now}}","by":"T. Wren","checkedBy":"R. Castellan","containers":4,"batch":"B-1","strength":12,"madeOn":"2026-03-01","price":120,"wentIn":false,"note":"x","corrects":null,"correctionReason":null}"""),
        ("PUT", "/stock-counts/~", $$"""{"productId":"hypo","pumpId":null,"litres":90,"kilograms":null,"happenedAt":"{{Now}}","by":"T. Wren"}"""),
        ("PUT", "/bathers/~", $$"""{"poolId":"main","day":"{{Now[..10]}}","number":120,"by":"T. Wren"}"""),
        ("PUT", "/incidents/~", $$"""{"poolId":"main","kind":"diarrhoeal_stool","authority":"%authority%","by":"T. Wren","note":"deep end","happenedAt":"{{Now}}"}"""),
        ("PUT", "/incidents/~/remarks/~", """{"by":"T. Wren","text":"water is cleared"}"""), ("PUT", "/incidents/~/closing", """{"by":"T. Wren","why":"held"}"""),
    ];

    [Fact]
    public async Task Whatever_is_asked_of_the_water_is_answered_with_a_reason_and_the_server_is_right_afterwards()
    {
        var server = await StartAsync();
        var authority = JsonSerializer.SerializeToNode((await server.GetAsync<List<KindOfIncident>>("/api/v1/incidents/plans"))[1].Authorities.First(a => a.InUse).Authority, PlantJson.Options)!.GetValue<string>();
        var doors = Doors.Select(d => d with { Body = d.Body?.Replace("%authority%", authority, StringComparison.Ordinal) }).ToArray();
        foreach (var (method, path, body) in doors) await GoodAsync(server, method, path, body);
        await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(lane => SpoiledRequests.SendAsync(server, doors, Requests / AtOnce, new Mutator(91700 + lane))));

        var given = (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Given;
        var open = await server.GetAsync<List<IncidentView>>("/api/v1/incidents?pool=main");
        Assert.Empty(await server.GetAsync<List<RefusalView>>("/api/v1/refusals"));
        server = await server.RestartAsync();
        await using (server)
        {
            Assert.Equal(given.Select(g => g.Dose.Id), (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Given.Select(g => g.Dose.Id));
            Assert.Equal(open.Select(i => (i.Id, i.Clock?.Word, i.Closed)), (await server.GetAsync<List<IncidentView>>("/api/v1/incidents?pool=main")).Select(i => (i.Id, i.Clock?.Word, i.Closed)));
        }
    }

    // Each door opens to what is right: else a spoiled request would be turned away for nothing.
    private static async Task GoodAsync(WholeServer server, string method, string path, string? body)
    {
        if (path.Contains('*', StringComparison.Ordinal) || (path.Contains('~', StringComparison.Ordinal) && !path.EndsWith('~')) || (method == "GET" && path.Contains('~', StringComparison.Ordinal))) return;
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri("/api/v1" + path.Replace("~", Guid.CreateVersion7().ToString(), StringComparison.Ordinal), UriKind.Relative));
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await server.Http.SendAsync(request);
        Assert.True(answer.IsSuccessStatusCode || answer.StatusCode == HttpStatusCode.NotFound && path.Contains("remarks", StringComparison.Ordinal), $"{method} {path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }

    private static async Task<WholeServer> StartAsync()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        TestResult[] tests =
        [
            new(Measurand.Ph, 7.9, TestMethod.Photometer), new(Measurand.FreeChlorine, 0.6, TestMethod.Photometer), new(Measurand.Temperature, 27, TestMethod.Meter),
            new(Measurand.TotalAlkalinity, 100, TestMethod.Photometer), new(Measurand.CalciumHardness, 250, TestMethod.Photometer), new(Measurand.DissolvedSolids, 900, TestMethod.Photometer),
        ];
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(20), tests)));
        return server;
    }

    private const string Confirmed = "{ by: M. Reed, on: \"2026-01-05\" }";

    private static readonly string Plant = WholeServer.Plant
        .Replace("    volume_m3: 400", $"    volume_m3: 400\n        volume_confirmed: {Confirmed}", StringComparison.Ordinal)
        .Replace("    name: Hall\n", $"    name: Hall\n    balance_tank_m3: 40\n    balance_tank_confirmed: {Confirmed}\n    turnover_hours: 4\n", StringComparison.Ordinal)
        .Replace("    probes:\n", "    probes:\n      - { id: redox, name: Redox, pool: main, measurand: orp, origin: raw, topic: hall/orp, format: number, range: [0, 1000], every_seconds: 1, reference_electrode: Ag/AgCl 3 M }\n", StringComparison.Ordinal)
        .Replace("circuits:\n", """
              - id: hypo
                name: Hypochlorite
                kind: sodium_hypochlorite
                strength_percent: 12.5
                strength_means: trade
                strength_on: "2026-01-01"
                price_per_l: 1
              - id: soda
                name: Sodium bicarbonate
                kind: sodium_bicarbonate
                price_per_kg: 2
            circuits:
              - id: annex
                name: Annex
                pools:
                  - { id: small, name: Small pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 50 }

            """, StringComparison.Ordinal);
}
