using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class FilterTests
{
    private static readonly CircuitSetup Plain = new()
    {
        TurnoverHours = 4, Pools = [new() { Id = "main-pool", VolumeM3 = 400 }],
        Filters = [new() { Id = "f1" }, new() { Id = "f2" }],
    };

    [Fact]
    public void Clean_filters_let_the_design_flow_through_at_their_clean_pressure()
    {
        var treatment = new Treatment(Plain);
        Assert.Equal(100, treatment.Flow, 1e-9);
        Assert.Equal(30, treatment.Pressure, 1e-9);
    }

    [Fact]
    public void Bathers_make_the_pressure_rise_and_the_flow_fall_and_a_wash_brings_both_back()
    {
        var treatment = new Treatment(Plain);
        var (pressure, flow) = (treatment.Pressure, treatment.Flow);
        for (var hour = 0; hour < 100; hour++)
        {
            treatment.Pass(1, 40, runs: true);
            Assert.True(treatment.Pressure > pressure && treatment.Flow < flow);
            (pressure, flow) = (treatment.Pressure, treatment.Flow);
        }

        Assert.True(pressure > 80 && flow is > 50 and < 80, $"{pressure} kPa, {flow} m3/h");
        treatment.Bed("f1")!.Wash();
        treatment.Bed("f2")!.Wash();
        Assert.InRange(treatment.Pressure, 30, 32);
        Assert.InRange(treatment.Flow, 98, 100);
    }

    [Fact]
    public void Of_two_filters_side_by_side_the_clean_one_takes_the_most_of_the_dirt()
    {
        var treatment = new Treatment(Plain);
        treatment.Pass(50, 40, runs: true);
        treatment.Bed("f1")!.Wash();
        var dirty = treatment.Bed("f2")!.Caught;
        treatment.Pass(1, 40, runs: true);
        Assert.True(treatment.Bed("f1")!.Caught - 0.03 > 2 * (treatment.Bed("f2")!.Caught - dirty));
    }

    [Fact]
    public void While_a_filter_is_washed_nothing_flows_and_it_is_told_before_and_after()
    {
        var plant = new SimulatedPlant(Plants.Quiet(s =>
        {
            s.Circuits[0].Filters = [new() { Id = "f1", Caught = 2 }];
            s.Washes = [new() { Circuit = s.Circuits[0].Id, Filter = "f1", After = "1h", For = "8m" }];
        }), Plants.Start);
        Assert.Empty(plant.AdvanceTo(Plants.Start.AddMinutes(53)).Washes);
        Assert.True(Assert.Single(plant.AdvanceTo(Plants.Start.AddMinutes(59)).Washes).Begins);
        var treatment = plant.Circuits[0].Treatment;
        Assert.True(treatment.Pressure > 60);
        plant.AdvanceTo(Plants.Start.AddMinutes(64));
        Assert.Equal((0, 0), (treatment.Flow, treatment.Pressure));
        Assert.All(plant.Circuits[0].Pumps, pump => Assert.Equal("stopped", pump.State));
        Assert.Empty(plant.AdvanceTo(Plants.Start.AddMinutes(69)).Washes);
        Assert.InRange(treatment.Pressure, 29, 33);
        Assert.False(Assert.Single(plant.AdvanceTo(Plants.Start.AddMinutes(75)).Washes).Begins);
    }

    [Fact]
    public void A_circulation_pump_that_stands_leaves_pools_without_treatment()
    {
        static double Chlorine(string? stops) => Plants.Run(Plants.Quiet(s => { if (stops is not null) s.Faults.Add(Plants.Fault(s.Circuits[0].Id, FaultKind.NoCirculation, after: stops)); }), TimeSpan.FromHours(16))
            .Circuits[0].View("main-pool").Free;
        Assert.True(Chlorine("8h") < 0.6 * Chlorine(null));
    }

    [Fact]
    public void A_wash_of_a_filter_that_is_not_there_is_refused() =>
        Assert.Throws<ScenarioException>(() => ScenarioFile.Parse("plant_of: quiet-month\nwashes: [{ circuit: main, filter: f9 }]"));
}
