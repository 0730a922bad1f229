using PlantWatch.Simulator.Probes;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class ProbeTests
{
    [Fact]
    public void A_healthy_probe_reads_the_water()
    {
        var circuit = Plants.Run(Plants.Quiet(), TimeSpan.FromDays(1)).Circuits[0];
        Assert.Equal(circuit.View("main-pool").Ph, circuit.Probe("main-ph").Published, 0.05);
        Assert.Equal(circuit.View("main-pool").Celsius, circuit.Probe("main-temperature").Published, 0.2);
    }

    [Fact]
    public void Drift_grows_with_the_days()
    {
        var circuit = Faulty("main-ph", FaultKind.Drift, 0.05, days: 5);
        Assert.Equal(0.2, circuit.Probe("main-ph").Signal - circuit.View("main-pool").Ph, 0.05);
    }

    [Fact]
    public void Broken_glass_sits_at_seven() => Assert.Equal(7, Faulty("main-ph", FaultKind.Broken).Probe("main-ph").Signal, 0.02);

    [Fact]
    public void An_electrode_without_slope_turns_about_seven()
    {
        var circuit = Faulty("main-ph", FaultKind.SlopeLoss, 0.5, days: 4);
        Assert.Equal((circuit.View("main-pool").Ph - 7) / 2, circuit.Probe("main-ph").Signal - 7, 0.05);
    }

    [Fact]
    public void A_stuck_probe_does_not_move()
    {
        var plant = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-orp", FaultKind.Stuck))), TimeSpan.FromDays(1.1));
        var stuckAt = plant.Circuits[0].Probe("main-orp").Signal;
        plant.AdvanceTo(plant.Now.AddHours(3));
        Assert.Equal(stuckAt, plant.Circuits[0].Probe("main-orp").Signal);
    }

    [Fact]
    public void A_poisoned_orp_probe_makes_the_pool_rich_in_chlorine()
    {
        var circuit = Faulty("main-orp", FaultKind.Poisoned, 60, days: 3);
        Assert.True(circuit.View("main-pool").Free > 4, "the controller chases its millivolts");
    }

    // The rise of 1 in log10 HOCl is worth the pool's own slope, 65 mV.
    [Fact]
    public void Orp_follows_the_logarithm_of_hypochlorous_acid()
    {
        double Orp(double free)
        {
            var probe = new Probe(new ProbeSetup { Id = "orp", Measures = Measures.Orp, Noise = 0, Wander = 0, LagSeconds = 0 }, new PoolSetup(), new Scenario());
            var pool = new PlantWatch.Simulator.Water.PoolWater(new PoolSetup { Start = new WaterStart { Free = free } });
            probe.Pass(0, 0.001, pool.View(), true, new PlantWatch.Simulator.Water.Treatment(new CircuitSetup()));
            return probe.Signal;
        }
        Assert.Equal(65, Orp(3) - Orp(0.3), 1.5);
    }

    [Fact]
    public void What_the_cell_sees_is_minutes_old()
    {
        var line = new SampleLine(120);
        var (old, fresh) = (default(PlantWatch.Simulator.Water.WaterView) with { Ph = 7.4 }, default(PlantWatch.Simulator.Water.WaterView) with { Ph = 7.0 });
        line.Flow(0, old, true);
        double seen = 0;
        for (var t = 10; t <= 120; t += 10) seen = line.Flow(t, fresh, true).Ph;
        Assert.Equal(7.4, seen);
        Assert.Equal(7.0, line.Flow(130, fresh, true).Ph);
    }

    private static PlantWatch.Simulator.Plant.SimulatedCircuit Faulty(string probe, FaultKind kind, double size = 0, double days = 2) =>
        Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault(probe, kind, size))), TimeSpan.FromDays(days)).Circuits[0];
}
