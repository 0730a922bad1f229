using System.Net;
using System.Text;
using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>Some thousands of spoiled requests at every address of the interface: each is answered with a reason, and the server is right afterwards.</summary>
public sealed class ApiFuzzTests
{
    private const int Requests = 3000;
    private const int AtOnce = 4;

    private static readonly string Now = WholeServer.Now.ToString();

    private static readonly (string Method, string Path, string? Body)[] Doors =
    [
        ("GET", "/site", null), ("GET", "/health-view", null), ("GET", "/circuits/*", null), ("GET", "/probes/*", null), ("GET", "/refusals?limit=*", null),
        ("GET", "/series?probe=*&from=*&to=*&width=*", null), ("GET", $"/series?probe=ph&from=*&to={Now}&width=*", null), ("GET", "/checks?pool=main&from=*&to=*&limit=*", null),
        ("GET", "/alarms?from=*&to=*&limit=*", null), ("GET", "/jobs?asset=*", null), ("GET", "/calibrations?probe=*", null), ("GET", "/checks/*", null),
        ("GET", "/charts/pools/*?from=*&to=*", null), ("GET", "/charts/pools/main.svg?from=*&to=*&width=*&height=40&theme=*", null),
        ("GET", "/charts/probes/*/agreement.svg", null), ("GET", "/charts/probes/ph/*?from=*&to=*", null), ("GET", "/charts/probes/ph/regression.png?from=*&width=*&height=*&theme=*", null),
        ("GET", "/probes/*/corrections", null), ("GET", "/probes/ph/record?from=*&to=*&show=*&tier=*", null), ("GET", $"/probes/ph/quality?from=*&to={Now}", null),
        ("PUT", "/corrections/~", $$"""{"probeId":"ph","fromService":null,"toService":null,"from":"2026-03-01T07:30:00Z","to":"{{Now}}","fouling":0,"drift":0.1,"driftSlope":0,"pivot":7,"u":0.04,"by":"R. Castellan","why":"buffers"}"""),
        ("POST", "/corrections/~/withdrawal", """{"by":"R. Castellan","why":"old buffer"}"""),
        ("PUT", "/checks/~", $$"""
            {"poolId":"main","sampledAt":"{{Now}}","enteredAt":"{{Now}}","who":"R. Castellan","point":"pool","place":"deep end",
             "results":[{"measurand":"ph","value":7.3,"method":"photometer","censoring":"none","dilution":1},{"measurand":"free_chlorine","value":1.2,"method":"photometer","censoring":"none","dilution":1}],
             "panel":[{"probeId":"panel-ph","value":7.3}],"bottomVisible":true,"bathers":4,"note":null,"corrects":null,"correctionReason":null}
            """),
        ("PUT", "/calibrations/~", """{"probeId":"ph","kind":"offset","slope":1,"offset":-0.1,"checks":[],"by":"R. Castellan","note":null}"""),
        ("PUT", "/bench/ph/sheets/~", """{"by":"R. Castellan","note":null,"work":["cleaned"],"startedAt":null,"endedAt":null,"asFound":[],"points":[{"buffer":"technical7","celsius":25,"reading":7.1,"source":"typed","lot":"A1","expires":"2027-01-01"}],"asLeft":[]}"""),
        ("POST", "/bench/ph/result", """{"by":null,"work":[],"points":[{"buffer":"technical7","celsius":25,"reading":7.1},{"buffer":"technical4","celsius":25,"reading":4.1}]}"""),
        ("PUT", "/bench/ph/out/~", """{"by":"R. Castellan"}"""), ("POST", "/bench/ph/out/~/back", """{"by":"R. Castellan"}"""), ("GET", "/bench/*?since=*", null),
        ("POST", "/calibrations/~/review", """{"accepted":true,"by":"I. Brandvold","why":null}"""), ("GET", "/calibrations/*", null),
        ("POST", "/calibrations/~/decision", """{"decision":"approved","by":"I. Brandvold","why":null,"holdsFrom":null}"""),
        ("POST", "/alarms/~/acknowledge", """{"by":"T. Wren","comment":"x"}"""), ("POST", "/alarms/~/shelve", """{"by":"T. Wren","why":"x","minutes":30}"""),
        ("POST", "/alarms/~/unshelve", """{"by":"T. Wren"}"""),
        ("PUT", "/jobs/~", """{"asset":"acid-pump","seen":"hums","done":null,"state":"open","alarmId":null,"by":"T. Wren","taskId":null,"parts":[{"name":"hose","count":1,"number":null}],"minutes":5}"""), ("GET", "/jobs/*", null), ("GET", "/reliability?days=*", null),
    ];

    [Fact]
    public async Task Whatever_is_sent_is_answered_with_a_reason_and_the_server_is_right_afterwards()
    {
        var server = await WholeServer.StartAsync();
        await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(lane => SpoiledRequests.SendAsync(server, Doors, Requests / AtOnce, new Mutator(8428 + lane))));

        var good = await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)));
        Assert.Equal(HttpStatusCode.OK, good.StatusCode);
        Assert.Empty(await server.GetAsync<List<RefusalView>>("/api/v1/refusals"));
        server = await server.RestartAsync();
        await using (server)
            Assert.NotEmpty(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main"));
    }

    public static TheoryData<string, string> Refused => new()
    {
        { """{"results":null}""", "results" }, { """{"results":[null]}""", "results[0]" }, { """{"panel":[null]}""", "panel[0]" }, { """{"panel":[{"value":7}]}""", "panel[0].probeId" },
        { """{"results":[{"measurand":"ph"}]}""", "results[0].value" }, { """{"results":[{"measurand":"ph","value":7.3,"method":99}]}""", "results[0].method" },
        { """{"results":[{"measurand":"ph","value":7.3,"method":"photometer, comparator"}]}""", "results[0].method" }, { """{"results":[{"measurand":"ph","value":"7.3"}]}""", "results[0].value" },
        { """{"corrects":"01a21259-9808-746d-ae19-959c08ea4807","correctionReason":"typed wrong"}""", "corrects" }, { """{"sampledAt":"yesterday"}""", "sampledAt" },
        { """{"who":"%long%"}""", "who" }, { """{"note":"%long%"}""", "note" }, { """{"poolId":"nowhere"}""", "poolId" },
    };

    [Fact]
    public async Task Each_refusal_of_a_check_names_the_field()
    {
        await using var server = await WholeServer.StartAsync();
        foreach (var row in Refused)
        {
            var (part, field) = ((string)row[0], (string)row[1]);
            var body = Merge(part.Replace("%long%", new string('x', 5000), StringComparison.Ordinal));
            var answer = await server.Http.PutAsync(new Uri($"/api/v1/checks/{Guid.CreateVersion7()}", UriKind.Relative), new StringContent(body, Encoding.UTF8, "application/json"));
            var text = await answer.Content.ReadAsStringAsync();
            Assert.True(answer.StatusCode == HttpStatusCode.BadRequest, $"{part}: {answer.StatusCode} {text}");
            Assert.Equal(field, JsonSerializer.Deserialize<Problem>(text, PlantJson.Options)!.Errors[0].Field);
        }
    }

    [Theory]
    [InlineData("/api/v1/refusals?limit=abc", 400, "limit")]
    [InlineData("/api/v1/checks?pool=main&from=banana", 400, "from")]
    [InlineData("/api/v1/alarms?to=2026-03-29", 400, "to")]
    [InlineData("/api/v1/series?probe=ph&from=0001-01-01T00:00:00Z&to=0009-01-01T00:00:00Z", 400, "from")]
    [InlineData("/api/v1/charts/pools/main.svg?from=2190-01-01T00:00:00Z&to=9999-12-31T23:59:59Z", 400, "to")]
    [InlineData("/api/v1/nothing", 404, "")]
    [InlineData("/api/v1/jobs/01a21259-9808-746d-ae19-959c08ea4807", 404, "")]
    public async Task A_question_that_cannot_be_answered_is_told_which_part_of_it_is_wrong(string address, int status, string field)
    {
        await using var server = await WholeServer.StartAsync();
        using var answer = await server.Http.GetAsync(new Uri(address, UriKind.Relative));
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal(field, JsonSerializer.Deserialize<Problem>(await answer.Content.ReadAsStringAsync(), PlantJson.Options)!.Errors[0].Field);
    }

    [Fact]
    public async Task A_page_of_another_address_can_neither_act_nor_listen()
    {
        await using var server = await WholeServer.StartAsync();
        using var post = new HttpRequestMessage(HttpMethod.Post, new Uri("/live/negotiate?negotiateVersion=1", UriKind.Relative));
        post.Headers.Add("Origin", "https://elsewhere.example");
        Assert.Equal(HttpStatusCode.Forbidden, (await server.Http.SendAsync(post)).StatusCode);
        using var own = new HttpRequestMessage(HttpMethod.Post, new Uri("/live/negotiate?negotiateVersion=1", UriKind.Relative));
        own.Headers.Add("Origin", server.Address.GetLeftPart(UriPartial.Authority));
        Assert.Equal(HttpStatusCode.OK, (await server.Http.SendAsync(own)).StatusCode);
    }

    [Fact]
    public async Task An_id_of_a_check_means_one_check_in_the_whole_plant_and_fifty_at_once_are_one()
    {
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant + "\n" + Annex);
        var (id, check) = (Guid.CreateVersion7(), WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)));
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => server.PutAsync($"/api/v1/checks/{id}", check)));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Single(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main"));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/checks/{id}", check with { PoolId = "small" })).StatusCode);
    }

    [Fact]
    public async Task A_note_that_is_done_and_sent_again_is_written_once()
    {
        await using var server = await WholeServer.StartAsync();
        var (id, note) = (Guid.CreateVersion7(), """{"asset":"acid-pump","seen":"hums","done":"cleaned","state":"done","by":"T. Wren"}""");
        for (var i = 0; i < 3; i++)
            (await server.Http.PutAsync(new Uri($"/api/v1/jobs/{id}", UriKind.Relative), new StringContent(note, Encoding.UTF8, "application/json"))).EnsureSuccessStatusCode();
        Assert.Single(await server.GetAsync<List<JobVersion>>($"/api/v1/jobs/{id}"));
    }

    private const string Annex = """
          - id: annex
            name: Annex
            pools:
              - id: small
                name: Small pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 50
        """;

    private static string Merge(string part)
    {
        var body = System.Text.Json.Nodes.JsonNode.Parse(Doors.Single(d => d.Path == "/checks/~").Body!)!.AsObject();
        foreach (var (name, value) in System.Text.Json.Nodes.JsonNode.Parse(part)!.AsObject()) body[name] = value?.DeepClone();
        return body.ToJsonString();
    }
}
