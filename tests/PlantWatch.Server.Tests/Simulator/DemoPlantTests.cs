using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.House;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Server.Tests.Simulator;

/// <summary>The demo's plant file and its scenario are two files about one plant: they must agree.</summary>
public sealed class DemoPlantTests
{
    private static readonly PlantPlan Plan = PlantFileReader.Read(File.ReadAllText(Repository.PathOf("simulators", "PlantWatch.Demo", "plant.yaml"))).Plan!;
    private static readonly Scenario Scenario = ScenarioFile.Load("demo");

    [Fact]
    public void Every_probe_speaks_where_the_plant_file_listens()
    {
        foreach (var circuit in Scenario.Circuits)
            Assert.Equal(
                circuit.Probes.Select(p => (p.Id, p.Pool, p.Topic, p.Record.Length > 0 ? circuit.BaseName + p.Record : "", p.PanelScaled)).Order(),
                Planned(circuit.Id).Probes.Select(p => (p.Id, p.PoolId ?? "", p.Topic, p.RecordName ?? "", p.Origin == SignalOrigin.PanelScaled)).Order());
    }

    [Fact]
    public void Every_pump_speaks_where_the_plant_file_listens()
    {
        foreach (var circuit in Scenario.Circuits)
            Assert.Equal(
                circuit.Pumps.Select(p => (p.Id, p.Pool, p.StateTopic, p.TankTopic, p.TankLitres, p.LitresPerHour, p.StrokesTopic, p.MillilitresPerStroke)).Order(),
                Planned(circuit.Id).Pumps.Select(p => (p.Id, p.PoolId ?? "", p.StateTopic, p.TankTopic!, p.TankLitres!.Value, p.LitresPerHour!.Value, p.StrokesTopic!, p.MillilitresPerStroke!.Value)).Order());
    }

    [Fact]
    public void The_water_is_as_large_as_the_plant_file_says()
    {
        foreach (var circuit in Scenario.Circuits)
        {
            Assert.Equal((circuit.BalanceTankM3, circuit.TurnoverHours), (Planned(circuit.Id).BalanceTankCubicMetres!.Value, Planned(circuit.Id).TurnoverHours!.Value));
            Assert.Equal(circuit.Filters.Select(f => f.Id), Planned(circuit.Id).Filters.Select(f => f.Id));
            Assert.Equal(circuit.Pools.Select(p => (p.Id, p.VolumeM3)), Planned(circuit.Id).Pools.Select(p => (p.Id, p.VolumeCubicMetres)));
        }
    }

    [Fact]
    public void The_people_make_the_rounds_that_are_due()
    {
        foreach (var pool in Plan.Circuits.SelectMany(c => c.Pools))
            foreach (var duty in pool.Duties)
                Assert.Contains(Scenario.People.Rounds, r => r.Pool == pool.Id
                    && duty.At.All(at => r.At.Contains(at.ToString("HH:mm", null)))
                    && duty.What.All(what => r.Tests.Exists(t => t.Replace("_", "", StringComparison.Ordinal).Equals(what.ToString(), StringComparison.OrdinalIgnoreCase))));
    }

    [Fact]
    public void One_circuit_speaks_in_packs_and_the_other_in_plain_numbers() => Assert.Equal(
        [PayloadFormat.SenmlJson, PayloadFormat.Number], Plan.Circuits.Select(c => Assert.Single(c.Probes.Select(p => p.Format).Distinct())));

    private static CircuitPlan Planned(string id) => Plan.Circuits.Single(c => c.Id == id);
}
