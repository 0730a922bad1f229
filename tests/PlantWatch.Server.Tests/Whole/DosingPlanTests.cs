using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Dosing plans through the public interface: steps in the plant's units, and refusals in words before them.</summary>
public sealed class DosingPlanTests
{
    private const string Confirmed = "{ by: M. Reed, on: \"2026-01-05\" }";

    private static readonly string Plant = WholeServer.Plant
        .Replace("    volume_m3: 400", $"    volume_m3: 400\n        volume_confirmed: {Confirmed}", StringComparison.Ordinal)
        .Replace("    name: Hall\n", $"    name: Hall\n    balance_tank_m3: 40\n    balance_tank_confirmed: {Confirmed}\n    turnover_hours: 4\n", StringComparison.Ordinal)
        .Replace("circuits:\n", """
              - id: hypo
                name: Hypochlorite
                kind: sodium_hypochlorite
                strength_percent: 12.5
                strength_means: trade
              - id: bicarb
                name: Bicarbonate
                kind: sodium_bicarbonate
                strength_percent: 100
              - id: tri
                name: Trichlor
                kind: trichlor
                strength_percent: 90
            circuits:

            """, StringComparison.Ordinal);

    private static readonly TestResult[] Tests =
    [
        new(Measurand.Ph, 7.4, TestMethod.Photometer), new(Measurand.FreeChlorine, 0.3, TestMethod.Photometer), new(Measurand.Temperature, 28, TestMethod.Meter),
        new(Measurand.TotalAlkalinity, 50, TestMethod.Photometer), new(Measurand.CalciumHardness, 250, TestMethod.Photometer), new(Measurand.DissolvedSolids, 800, TestMethod.Meter),
    ];

    private static async Task<DosingPlanView> PlanAsync(WholeServer server, DosingPlanRequest request) =>
        await WholeServer.ReadAsync<DosingPlanView>(await server.Http.PostAsJsonAsync("/api/v1/pools/main/dosing-plan", request, PlantJson.Options));

    [Fact]
    public async Task A_plan_has_its_steps_and_its_end_and_leaves_out_what_must_not_go_in()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, Tests));
        var plan = await PlanAsync(server, new(BathersOut: true));
        Assert.Equal(PlanOutcome.Planned, plan.Outcome);
        Assert.Empty(plan.Refused);
        Assert.Contains(plan.Steps, s => s.Product!.Id == "bicarb" && s.Mass!.Unit == "kg" && s.WaitHours == 4 && s.Equipment.Count > 0 && s.Precautions.Count > 0);
        Assert.Contains(plan.Steps, s => s.Product!.Id == "hypo" && s.Litres is not null);
        Assert.Equal("Trichlor", Assert.Single(plan.LeftOut).Name);
        Assert.All(plan.Figures.Where(f => f.Now is not null), f => Assert.True(f.Then >= (f.Low ?? f.Then) - 0.05 && f.Then <= (f.High ?? f.Then) + 0.05));
        Assert.Contains(plan.Figures, f => f.Figure == PlannedFigure.TotalAlkalinity && f.LowSource is null && f.Standing == BandStanding.Below);
    }

    [Fact]
    public async Task Nobody_plans_while_bathers_are_in_or_not_counted_and_the_bands_are_shown_all_the_same()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, Tests));
        foreach (var (said, code) in ((bool?, string)[])[(null, "dose.bathers_not_known"), (false, "dose.bathers_in")])
        {
            var plan = await PlanAsync(server, new(BathersOut: said));
            Assert.Contains(plan.Refused, r => r.Code == code);
            Assert.Empty(plan.Steps);
            Assert.NotEmpty(plan.Figures);
        }
    }

    [Fact]
    public async Task A_live_probe_never_stands_in_for_a_stale_test()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromHours(6), Tests));
        await server.PublishAsync("hall/ph", "7.20");
        var plan = await PlanAsync(server, new(BathersOut: true));
        Assert.Equal(PlanOutcome.Refused, plan.Outcome);
        Assert.Contains(plan.Refused, r => r.Code == "dose.test_stale");
        Assert.Empty(plan.Steps);
        Assert.Equal(7.4, plan.Figures.Single(f => f.Figure == PlannedFigure.Ph).Now);
    }

    [Fact]
    public async Task Stated_figures_take_the_place_of_tests_and_what_lies_outside_is_named_by_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Equal(PlanOutcome.Missing, (await PlanAsync(server, new(BathersOut: true))).Outcome);
        var stated = new WhatIfWater(7.4, 28, 100, 250, 800, null, 2);
        Assert.Equal(PlanOutcome.NothingToDo, (await PlanAsync(server, new(stated, BathersOut: true))).Outcome);
        var wrong = await server.Http.PostAsJsonAsync("/api/v1/pools/main/dosing-plan", new DosingPlanRequest(stated with { Ph = 12 }), PlantJson.Options);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        Assert.Contains("water.ph", await wrong.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
