using PlantWatch.Simulator.Probes;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Pumps;

/// <summary>A dosing pump with its tank.</summary>
internal sealed class Pump
{
    private readonly Controller _controller;
    private readonly IReadOnlyList<Fault> _faults;

    /// <summary>A pump of a scenario.</summary>
    public Pump(PumpSetup setup, Scenario scenario)
    {
        Setup = setup;
        Product = scenario.Product(setup.Product);
        _controller = new Controller(setup.Controller, new Chance(scenario.Seed, setup.Id).Even() * setup.Controller.CycleSeconds);
        _faults = Fault.Of(scenario, setup.Id);
        TankLitres = setup.TankLitres * setup.TankStart / 100;
    }

    /// <summary>Fixed facts.</summary>
    public PumpSetup Setup { get; }

    /// <summary>What it delivers.</summary>
    public ProductSetup Product { get; }

    /// <summary>Litres left.</summary>
    public double TankLitres { get; private set; }

    /// <summary>Litres delivered since the start.</summary>
    public double Delivered { get; private set; }

    /// <summary>Strokes since the start, whatever they moved.</summary>
    public double Strokes { get; private set; }

    /// <summary>Per cent left.</summary>
    public double TankPercent => 100 * TankLitres / Setup.TankLitres;

    /// <summary>The word it reports: stopped, running, fault.</summary>
    public string State { get; private set; } = "stopped";

    /// <summary>Runs for a step and gives the litres that reached the water.</summary>
    public double Pass(double seconds, double stepSeconds, double panel, bool flows)
    {
        var hours = seconds / 3600;
        var on = _controller.On(seconds, stepSeconds, panel, flows);
        if (_faults.Has(FaultKind.StuckOn, hours)) on = stepSeconds;
        if (_faults.Has(FaultKind.ReportsFault, hours))
        {
            State = "fault";
            return 0;
        }
        State = on > 0 ? "running" : "stopped";
        var stroked = Setup.LitresPerHour * on / 3600;
        Strokes += stroked * 1000 / Setup.MillilitresPerStroke;
        if (_faults.Has(FaultKind.LostPrime, hours)) return 0;
        var litres = Math.Min(stroked + ((_faults.Now(FaultKind.Siphon, hours)?.Size ?? 0) * stepSeconds / 3600), TankLitres);
        TankLitres -= litres;
        Delivered += litres;
        return litres;
    }

    /// <summary>People fill the tank when it is low.</summary>
    /// <returns>How much they put in, in litres; 0 when it is not low.</returns>
    public double Refill()
    {
        if (TankPercent >= Setup.RefillBelow) return 0;
        var litres = (Setup.TankLitres * 0.95) - TankLitres;
        TankLitres += litres;
        return litres;
    }
}
