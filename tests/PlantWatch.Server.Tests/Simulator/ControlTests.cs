using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class ControlTests
{
    [Fact]
    public void The_controller_holds_its_set_point_through_a_week()
    {
        var plant = new SimulatedPlant(Plants.Quiet(), Plants.Start);
        for (var hour = 1; hour <= 7 * 24; hour++)
        {
            plant.AdvanceTo(Plants.Start.AddHours(hour));
            Assert.InRange(plant.Circuits[0].View("main-pool").Ph, 7.3, 7.5);
            Assert.InRange(plant.Circuits[0].View("main-pool").Free, 0.7, 3.5);
        }
    }

    [Fact]
    public void A_probe_that_reads_high_makes_the_panel_dose_too_much_acid()
    {
        var healthy = Plants.Run(Plants.Quiet(), TimeSpan.FromDays(3)).Circuits[0];
        var wrong = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-ph", FaultKind.Step, 0.3))), TimeSpan.FromDays(3)).Circuits[0];
        Assert.Equal(7.4, wrong.Probe("main-ph").Panel, 0.08);
        Assert.InRange(healthy.View("main-pool").Ph - wrong.View("main-pool").Ph, 0.2, 0.4);
        Assert.True(wrong.Pumps.Single(p => p.Setup.Id == "main-acid").Delivered > 1.5 * healthy.Pumps.Single(p => p.Setup.Id == "main-acid").Delivered);
    }

    [Fact]
    public void Turning_the_panel_back_brings_the_water_back()
    {
        var circuit = Plants.Run(Plants.Quiet(s =>
        {
            s.Faults.Add(Plants.Fault("main-ph", FaultKind.Step, 0.3));
            s.PanelTurns.Add(new PanelTurn { After = "2d", Probe = "main-ph", Add = -0.3 });
        }), TimeSpan.FromDays(6)).Circuits[0];
        Assert.Equal(7.4, circuit.View("main-pool").Ph, 0.08);
        Assert.Equal(7.7, circuit.Probe("main-ph").Signal, 0.08);
    }

    [Fact]
    public void A_pump_that_lost_prime_runs_and_delivers_nothing()
    {
        var plant = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-hypo", FaultKind.LostPrime, after: "8h"))), TimeSpan.FromHours(19));
        var pump = plant.Circuits[0].Pumps.Single(p => p.Setup.Id == "main-hypo");
        var before = pump.TankLitres;
        plant.Cadence = Cadence.Live;
        var words = plant.AdvanceTo(plant.Now.AddHours(1)).Messages.Where(m => m.Topic == pump.Setup.StateTopic).Select(m => System.Text.Encoding.UTF8.GetString(m.Payload));
        Assert.Contains("running", words);
        Assert.Equal(before, pump.TankLitres);
        Assert.True(plant.Circuits[0].View("main-pool").Free < 0.5);
    }

    [Fact]
    public void A_pump_stuck_on_overdoses()
    {
        var circuit = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-acid", FaultKind.StuckOn, after: "1h"))), TimeSpan.FromHours(12)).Circuits[0];
        Assert.True(circuit.View("main-pool").Ph < 7.0);
    }

    [Fact]
    public void A_pump_in_fault_says_so_and_stands()
    {
        var pump = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-hypo", FaultKind.ReportsFault, after: "1m"))), TimeSpan.FromHours(12))
            .Circuits[0].Pumps.Single(p => p.Setup.Id == "main-hypo");
        Assert.Equal(("fault", true), (pump.State, pump.Delivered < 0.2));
    }

    [Fact]
    public void Nothing_is_dosed_while_the_sample_cell_has_no_flow()
    {
        var circuit = Plants.Run(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-flow", FaultKind.NoFlow, after: "1m"))), TimeSpan.FromHours(12)).Circuits[0];
        Assert.All(circuit.Pumps, p => Assert.True(p.Delivered < 0.2));
    }

    [Fact]
    public void A_low_tank_is_filled_the_next_morning()
    {
        var notes = new SimulatedPlant(Plants.Quiet(s => s.Circuits[0].Pumps[0].TankStart = 10), Plants.Start).AdvanceTo(Plants.Start.AddHours(12)).Notes;
        Assert.Contains(notes, n => n.Contains("tank of main-hypo filled", StringComparison.Ordinal));
    }
}
