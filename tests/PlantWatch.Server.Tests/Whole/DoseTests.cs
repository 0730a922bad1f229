using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Doses through the public interface: advice and refusal in words, what was given, and what the retest says of it.</summary>
public sealed class DoseTests
{
    private const string Confirmed = "{ by: M. Reed, on: \"2026-01-05\" }";

    private static readonly string Plant = WholeServer.Plant
        .Replace("    volume_m3: 400", $"    volume_m3: 400\n        volume_confirmed: {Confirmed}", StringComparison.Ordinal)
        .Replace("    name: Hall\n", $"    name: Hall\n    balance_tank_m3: 40\n    balance_tank_confirmed: {Confirmed}\n    turnover_hours: 4\n", StringComparison.Ordinal)
        .Replace("  time_zone: Europe/London\n", "  time_zone: Europe/London\n  units: us\n", StringComparison.Ordinal)
        .Replace("circuits:\n", """
              - id: hypo
                name: Hypochlorite
                kind: sodium_hypochlorite
                strength_percent: 12.5
                strength_means: trade
                price_per_l: 1
              - id: tri
                name: Trichlor
                kind: trichlor
                strength_percent: 90
            circuits:

            """, StringComparison.Ordinal);

    private static readonly TestResult[] Tests =
    [
        new(Measurand.Ph, 7.5, TestMethod.Photometer), new(Measurand.FreeChlorine, 0.6, TestMethod.Photometer), new(Measurand.Temperature, 28, TestMethod.Meter),
        new(Measurand.TotalAlkalinity, 100, TestMethod.Photometer), new(Measurand.CalciumHardness, 250, TestMethod.Photometer),
    ];

    private static async Task<DoseAdviceView> AdviseAsync(WholeServer server, DoseAdviceRequest request) =>
        await WholeServer.ReadAsync<DoseAdviceView>(await server.Http.PostAsJsonAsync("/api/v1/pools/main/dose-advice", request, PlantJson.Options));

    [Fact]
    public async Task Advice_says_amount_cap_effect_equipment_and_precautions_in_the_units_of_the_plant()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, Tests));
        var advice = await AdviseAsync(server, new("hypo", Measurand.FreeChlorine, 1.6, BathersOut: true));

        Assert.Empty(advice.Refused);
        // 440 m3 x 1 mg/L at 125 g/L: 3.52 L, 119 US fl oz.
        Assert.Equal(3.52, advice.Dose!.TotalVolume!.Value, 1e-6);
        Assert.Equal("119 US fl oz", advice.Dose.TotalVolume.Text.Replace('\u00a0', ' '));
        Assert.Equal(3.52, advice.Dose.Cost!.Value, 1e-6);
        Assert.True(advice.Dose.Whole);
        Assert.Equal(1.6, advice.Dose.AtOnce!.FreeChlorine, 1e-6);
        Assert.True(advice.Dose.AtOnce.Ph > advice.Dose.Before!.Ph);
        Assert.Equal(4, advice.RetestHours);
        Assert.All([advice.How, advice.Equipment, advice.Precautions], said => Assert.NotEmpty(said));
        Assert.Contains(advice.Precautions, said => said.Text.Contains("Hydrochloric acid", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_refusal_is_an_answer_in_words()
    {
        await using var server = await WholeServer.StartAsync();
        var advice = await AdviseAsync(server, new("acid", Measurand.Ph, 7.4));
        Assert.Null(advice.Dose);
        Assert.Equal(["dose.volume_unconfirmed", "dose.tank_not_known", "dose.test_missing", "dose.bathers_not_known"], advice.Refused.Select(said => said.Code));
        Assert.All(advice.Refused, said => Assert.NotEqual(said.Code, said.Text));
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.PostAsJsonAsync("/api/v1/pools/main/dose-advice", new DoseAdviceRequest("lead", Measurand.Ph, 7.4), PlantJson.Options)).StatusCode);
    }

    [Fact]
    public async Task While_an_incident_is_open_the_amount_for_its_plan_is_worked_out_and_otherwise_what_always_holds_stays()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, Tests));
        var ask = new DoseAdviceRequest("hypo", Measurand.FreeChlorine, 20, BathersOut: true, Closed: true);
        Assert.Equal(["dose.target_beyond_stop"], (await AdviseAsync(server, ask)).Refused.Select(s => s.Code));
        Assert.Null((await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Hold);

        var incident = Guid.CreateVersion7();
        await WholeServer.ReadAsync<IncidentView>(await server.PutAsync($"/api/v1/incidents/{incident}", new DeclareIncident(
            "main", PlantWatch.Core.Chemistry.IncidentKind.DiarrhoealStool, PlantWatch.Core.Chemistry.IncidentAuthority.UsCdc, "R. Example", null, Instant.Never)));
        Assert.Equal(["dose.incident_without_row", "incident.cyanurate_unknown"], (await AdviseAsync(server, ask)).Refused.Select(s => s.Code));
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.CyanuricAcid, 0, TestMethod.Photometer)));
        var hold = (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Hold!;
        Assert.Equal((incident, 10.0, 20.0), (hold.IncidentId, hold.StartAt!.Value, hold.Highest!.Value));

        // 440 m3 x 19.4 mg/L at 125 g/L.
        var advice = await AdviseAsync(server, ask with { Closed = false });
        Assert.Empty(advice.Refused);
        Assert.Equal(440 * 19.4 / 125, advice.Dose!.TotalVolume!.Value, 1e-6);
        Assert.Contains(advice.Says, s => s.Code == "dose.for_incident" && s.Text.Contains("stays closed", StringComparison.Ordinal));
        Assert.Contains((await AdviseAsync(server, ask with { ProductId = "tri" })).Refused, s => s.Code == "dose.incident_stabilised");
    }

    [Fact]
    public async Task A_dose_given_is_kept_once_and_the_retest_answers_it_also_after_a_restart()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var given = WholeServer.Now - TimeSpan.FromHours(5);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(given - TimeSpan.FromMinutes(10), Tests));
        var (id, dose) = (Guid.CreateVersion7(), new GivenDoseRequest("main", "hypo", null, 3.52, given, "R. Example"));
        var first = await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{id}", dose));
        Assert.Equal(1.0, first.Dose.Predicted.Single(p => p.Measurand == Measurand.FreeChlorine).Change, 1e-6);
        server = await server.RestartAsync();
        await using (server)
        {
            var again = await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{id}", dose));
            Assert.Equal(first.ArrivedAt, again.ArrivedAt);
            Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/doses/{id}", dose with { Litres = 4 })).StatusCode);
            await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.FreeChlorine, 1.55, TestMethod.Photometer)));

            var seen = Assert.Single((await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Given);
            var figure = Assert.Single(Assert.Single(seen.Responses).Figures);
            Assert.Equal((ResponseWord.AsPredicted, 1.55), (figure.Word, figure.Measured));
            Assert.Contains("predicted 1.60, measured 1.55", figure.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_id_stands_for_one_dose_in_the_whole_plant_and_a_retry_is_known_after_its_product_has_gone()
    {
        var twoCircuits = Plant + """

              - id: warm
                name: Warm water
                pools:
                  - id: spa
                    name: Spa
                    kind: spa
                    setting: indoor
                    disinfectant: chlorine
                    volume_m3: 6
            """;
        var server = await WholeServer.StartAsync(plant: twoCircuits);
        var (id, dose) = (Guid.CreateVersion7(), new GivenDoseRequest("main", "hypo", null, 2, WholeServer.Now, "R. Example"));
        var first = await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{id}", dose));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/doses/{id}", dose with { PoolId = "spa" })).StatusCode);
        await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), twoCircuits.Replace("id: hypo", "id: hypo-12", StringComparison.Ordinal));
        server = await server.RestartAsync();
        await using (server)
        {
            var again = await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{id}", dose));
            Assert.Equal(first.ArrivedAt, again.ArrivedAt);
            Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/doses/{Guid.CreateVersion7()}", dose)).StatusCode);
        }
    }

    [Fact]
    public async Task What_cannot_have_been_given_is_refused_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var dose = new GivenDoseRequest("main", "hypo", 1, null, WholeServer.Now, "R. Example");
        foreach (var (field, wrong) in ((string, GivenDoseRequest)[])[
            ("poolId", dose with { PoolId = null }), ("productId", dose with { ProductId = "lead" }), ("amount", dose with { Kilograms = null }), ("amount", dose with { Kilograms = -1 }),
            ("amount", dose with { Kilograms = null, Litres = 1e308 }), ("by", dose with { By = " " }), ("givenAt", dose with { GivenAt = default }),
            ("givenAt", dose with { GivenAt = Instant.FromUtc(9999, 12, 31, 23) }), ("givenAt", dose with { GivenAt = WholeServer.Now + TimeSpan.FromHours(2) }), ("corrects", dose with { Corrects = Guid.CreateVersion7() })])
        {
            var answer = await server.PutAsync($"/api/v1/doses/{Guid.CreateVersion7()}", wrong);
            Assert.Equal((field, HttpStatusCode.BadRequest), (field, answer.StatusCode));
            Assert.Contains($"\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Empty((await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Given);
    }

    [Fact]
    public async Task Products_that_may_not_go_in_say_so_before_anybody_asks()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var products = (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Products;
        Assert.Contains("dose.stabiliser_indoors", products.Single(p => p.Id == "tri").Unfit.Select(said => said.Code));
        Assert.Empty(products.Single(p => p.Id == "hypo").Unfit);
        Assert.Equal([(Measurand.FreeChlorine, 1)], products.Single(p => p.Id == "hypo").Targets.Select(t => (t.Measurand, t.Direction)));
    }
}
