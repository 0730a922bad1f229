using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Plant rounds and instruments through the public interface, from the plant file to the record.</summary>
public sealed class PlantRoundTests
{
    private static readonly string Plant = WholeServer.Plant.Replace("circuits:\n", """
        instruments:
          - { id: photo, name: Photometer, tests: [free_chlorine, ph], verify_every_days: 14 }
        circuits:

        """, StringComparison.Ordinal).Replace("    name: Hall\n", """
            name: Hall
            plant_round:
              at: "08:30"
              items:
                - { id: in, what: filter_inlet, name: Sand filter in, high: 150 }
                - { id: meter, what: make_up_meter }
                - { id: eyewash, what: eyewash, every_days: 7 }
                - { id: smell, what: other, name: Smell, reading: works }

        """, StringComparison.Ordinal);

    [Fact]
    public async Task A_round_of_the_plant_file_is_walked_once_and_read_back_from_the_record_after_a_restart()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var view = Assert.Single(await server.GetAsync<List<PlantRoundView>>("/api/v1/plant-rounds"));
        Assert.Equal(["in", "meter", "eyewash", "smell"], view.Items.Select(i => i.Id));
        Assert.Equal(("Sand filter in", "Make-up meter", "kPa"), (view.Items[0].Name, view.Items[1].Name, view.Items[0].Unit));
        Assert.NotEqual(RoundWord.Walked, view.Word);
        var (id, asked) = (Guid.CreateVersion7(), new PlantRoundRequest("hall", WholeServer.Now, "R. Castellan", [new("in", 162, null, null), new("eyewash", null, false, "no water")], "floor wet"));
        var answer = await AnswerAsync<PlantRoundAnswer>(await server.PutAsync($"/api/v1/plant-rounds/{id}", asked));
        Assert.Equal(["in", "eyewash"], answer.Lines.Select(l => l.ItemId));
        Assert.Equal(("round.above", true), (answer.Lines[0].Says[0].Code, answer.Lines[1].Out));

        server = await server.RestartAsync();
        await using (server)
        {
            // Sent again after a break it is answered as the first time, and kept once; another one under its id is not taken.
            Assert.Equal(answer.Lines[0].Says[0], (await AnswerAsync<PlantRoundAnswer>(await server.PutAsync($"/api/v1/plant-rounds/{id}", asked))).Lines[0].Says[0]);
            Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/plant-rounds/{id}", asked with { Remark = null })).StatusCode);
            var after = Assert.Single(await server.GetAsync<List<PlantRoundView>>("/api/v1/plant-rounds"));
            Assert.Equal((RoundWord.Walked, "R. Castellan", 162.0, false), (after.Word, after.By, after.Items[0].LastValue, after.Items[2].LastWorks));
            var told = Assert.Single((await server.GetAsync<EntriesView>("/api/v1/entries?about=rounds")).Entries);
            Assert.Contains("floor wet", told.Text, StringComparison.Ordinal);
            Assert.Contains("162\u00a0kPa is over 150\u00a0kPa", told.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_round_that_cannot_be_is_refused_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var asked = new PlantRoundRequest("hall", WholeServer.Now, "R. Castellan", [new("in", 16_200, null, null)], null);
        async Task<(HttpStatusCode, string, string)> SaidAsync(PlantRoundRequest request, Guid? id = null)
        {
            var response = await server.PutAsync($"/api/v1/plant-rounds/{id ?? Guid.CreateVersion7()}", request);
            var error = (await response.Content.ReadFromJsonAsync<Problem>(PlantJson.Options))!.Errors[0];
            return (response.StatusCode, error.Field, error.Code);
        }

        Assert.Equal((HttpStatusCode.BadRequest, "readings[0]", "round.impossible"), await SaidAsync(asked));
        Assert.Equal((HttpStatusCode.BadRequest, "circuit", "circuit.not_known"), await SaidAsync(asked with { Circuit = "cellar" }));
        Assert.Equal((HttpStatusCode.BadRequest, "by", "field.required"), await SaidAsync(asked with { By = " " }));
        Assert.Equal((HttpStatusCode.BadRequest, "readings[0]", "field.required"), await SaidAsync(asked with { Readings = [new(" ", 5, null, null)] }));
        Assert.Equal((HttpStatusCode.BadRequest, "id", "id.not_version_7"), await SaidAsync(asked, Guid.NewGuid()));
    }

    [Fact]
    public async Task An_instrument_that_read_its_standard_wrong_makes_its_tests_less_sure_and_says_so_beside_them()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.All(Assert.Single(await server.GetAsync<List<InstrumentView>>("/api/v1/instruments")).Tests, t => Assert.Equal(InstrumentWord.NotVerified, t.Word));
        var before = await UncertaintyAsync(server);
        var (id, said) = (Guid.CreateVersion7(), new VerifyRequest("photo", Measurand.FreeChlorine, "glass 2", 1.0, 0.1, 1.4, WholeServer.Now, "R. Castellan"));
        Assert.Equal(VerificationWord.Outside, (await AnswerAsync<VerificationView>(await server.PutAsync($"/api/v1/instruments/verifications/{id}", said))).Word);
        Assert.True((await server.PutAsync($"/api/v1/instruments/verifications/{id}", said)).IsSuccessStatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/instruments/verifications/{id}", said with { Reading = 1 })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.PutAsync($"/api/v1/instruments/verifications/{Guid.CreateVersion7()}", said with { InstrumentId = "none" })).StatusCode);

        Assert.True(await UncertaintyAsync(server, "check.instrument_failed") > 2 * before);
        var view = Assert.Single(await server.GetAsync<List<InstrumentView>>("/api/v1/instruments"));
        Assert.Equal((InstrumentWord.Failed, 14.0), (view.Tests[0].Word, view.EveryDays));
        Assert.Contains("outside tolerance", Assert.Single((await server.GetAsync<EntriesView>("/api/v1/entries?about=reagents")).Entries).Text, StringComparison.Ordinal);
    }

    private static async Task<double> UncertaintyAsync(WholeServer server, string? remark = null)
    {
        var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.FreeChlorine, 1.4, TestMethod.Photometer));
        var id = Guid.CreateVersion7();
        var answer = await AnswerAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        // What the instrument makes of it is no part of what was sent: the same once more is the same, and is answered as the first time.
        Assert.Equal(answer.Check.Results[0], (await AnswerAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check))).Check.Results[0]);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/checks/{id}", check with { Note = "another" })).StatusCode);
        Assert.Equal(remark is null, answer.Check.Results[0].InstrumentDoubt is null);
        Assert.Equal(remark, answer.Remarks.FirstOrDefault(r => r.Code.StartsWith("check.instrument", StringComparison.Ordinal))?.Code);
        return (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Pools[0].Manual.Single(m => m.Measurand == Measurand.FreeChlorine).U;
    }

    private static async Task<T> AnswerAsync<T>(HttpResponseMessage response)
    {
        Assert.True(response.IsSuccessStatusCode, await response.Content.ReadAsStringAsync());
        return (await response.Content.ReadFromJsonAsync<T>(PlantJson.Options))!;
    }
}
